import { useEffect } from 'react';
import { useStore } from 'zustand';
import type { RecentState } from '../../state/onRecent.ts';
import { useBench, useJobs } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';

/** The projects opened lately, on the bench itself: nothing where there are none. */
export function RecentList() {
  const { onRecent } = useBench();
  const projects = useStore(onRecent, (state) => state.projects);
  useEffect(() => void onRecent.look(), [onRecent]);
  if (projects.length === 0) return null;
  return (
    <section className="recent" aria-labelledby="recent-title">
      <h3 id="recent-title">Opened lately</h3>
      <RecentRows projects={projects} />
    </section>
  );
}

/** The same as a slip over the bay of the project that is open. */
export function RecentSlip() {
  const { onRecent } = useBench();
  const { projects, isOpen } = useStore(onRecent);
  if (!isOpen) return null;
  return (
    <section className="slip recent recent-slip" aria-labelledby="recent-title">
      <div className="slip-head">
        <h2 id="recent-title">Opened lately</h2>
        <Button look="quiet" name="Close the list of projects" hint="Key Escape" onPress={onRecent.shut}>
          Close
        </Button>
      </div>
      {projects.length === 0 ? (
        <p className="teach">No other project yet. What you open with “Open another” is listed here from then on.</p>
      ) : (
        <RecentRows projects={projects} />
      )}
    </section>
  );
}

function RecentRows({ projects }: Pick<RecentState, 'projects'>) {
  const { onRecent } = useBench();
  const busy = useJobs((jobs) => jobs.current !== null);
  return (
    <ul className="recent-rows">
      {projects.map(({ id, label, where, openedOn, missing }) => (
        <li key={id} className={missing ? 'recent-row recent-missing' : 'recent-row'}>
          <button
            type="button"
            className="recent-open"
            disabled={busy || missing}
            aria-label={missing ? `${label}, not there any more` : `Open ${label}`}
            aria-describedby={`recent-${id}`}
            onClick={() => void onRecent.open(id)}
          >
            <b>{label}</b>
            <span id={`recent-${id}`}>
              {missing && <em>Not there any more. It stood at: </em>}
              {where}
              {openedOn !== undefined && `, opened on ${openedOn}`}
            </span>
          </button>
          <Button
            look="quiet"
            name={`Take ${label} off the list`}
            hint="Its files stay where they are"
            onPress={() => void onRecent.forget(id)}
          >
            Take off
          </Button>
        </li>
      ))}
    </ul>
  );
}
