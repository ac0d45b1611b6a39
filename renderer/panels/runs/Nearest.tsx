import type { Clearance, Lay } from '../../../shared/document/lay/schema.ts';
import type { Project } from '../../../shared/document/project/schema.ts';
import { useBench } from '../../state/useBench.ts';
import { Length } from '../Length.tsx';

/** What a clearance is measured to, by its name in the project. */
export function thingName(project: Project, to: Clearance['to']): string {
  if (to.kind === 'run') return project.runs.find((run) => run.id === to.id)?.name ?? to.id;
  const skin = project.bay.skins.find((s) => s.id === to.id)?.name ?? to.id;
  return to.part === undefined ? skin : `${to.part} (${skin})`;
}

/** The nearest thing of each skin and of each other run, nearest to its limit first; each flies to its place. */
export function Nearest({ lay, project }: { lay: Lay; project: Project }) {
  const { session, hover } = useBench();
  const tightFirst = [...lay.clearances].sort(
    (p, q) => p.provenAtLeastMm - p.requiredMm - (q.provenAtLeastMm - q.requiredMm),
  );
  if (tightFirst.length === 0) return null;
  return (
    <section aria-label="Nearest things">
      <h3>Nearest things</h3>
      <ul className="nearest">
        {tightFirst.map((clearance) => {
          const short = clearance.provenAtLeastMm < clearance.requiredMm;
          return (
            <li key={`${clearance.to.kind}-${clearance.to.id}-${clearance.to.part ?? ''}`}>
              <button
                type="button"
                className={short ? 'near-row near-short' : 'near-row'}
                onClick={() => {
                  const { arcLengthMm } = clearance.at;
                  hover.setState({ place: { run: lay.run, arcLengthMm, from: 'finding' } });
                  session.flyTo(clearance.at.point, 240);
                }}
              >
                <span className="near-name">{thingName(project, clearance.to)}</span>
                <span className="near-figure">
                  <Length mm={clearance.provenAtLeastMm} rounding="down" denominator={32} />
                </span>
                <span className="near-limit">
                  {short ? 'too near, needs ' : 'needs '}
                  <Length mm={clearance.requiredMm} rounding="up" denominator={32} />
                </span>
              </button>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
