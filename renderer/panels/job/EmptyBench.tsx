import { useBench, useJobs } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { BareRule } from '../straightView/BareRule.tsx';

import { RecentList } from './RecentList.tsx';

/** Nothing on the bench yet: what the program is for and the ways to begin. */
export function EmptyBench() {
  const bench = useBench();
  const busy = useJobs((jobs) => jobs.current !== null);
  return (
    <section className="empty" aria-labelledby="empty-title">
      <h2 id="empty-title">Lay the hose here before you cut it there.</h2>
      <p>
        Put a scan of the bay on the bench, say where each hose joins, and the program finds how the hose will really
        lie: where to cut, where to mark, how to clock the ends, and what it may not touch.
      </p>
      <div className="empty-buttons">
        <Button look="main" disabled={busy} onPress={() => void bench.openDemo()}>
          Open the example bay
        </Button>
        <Button disabled={busy} onPress={() => void bench.firstLay()}>
          Show me a first lay
        </Button>
        <Button disabled={busy} onPress={() => void bench.onNewBay.choose()}>
          New bay from a scan
        </Button>
        <Button disabled={busy} onPress={() => void bench.openChosen()}>
          Open a project
        </Button>
      </div>
      <p className="empty-drop">A scan can also be dropped on this window: STL, PLY, OBJ, GLB or glTF.</p>
      <RecentList />
      <div className="empty-rule">
        <BareRule />
      </div>
      <p className="empty-safety">
        It advises and certifies nothing: parts' makers, local codes and licensed practice decide.
      </p>
    </section>
  );
}
