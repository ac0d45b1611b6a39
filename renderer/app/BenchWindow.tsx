import { useEffect } from 'react';
import { useStore } from 'zustand';
import { BayCard } from '../panels/bay/BayCard.tsx';
import { BenchCard } from '../panels/benchRecord/BenchCard.tsx';
import { HandReadout } from '../panels/byHand/HandReadout.tsx';
import { ChecksCard } from '../panels/findings/ChecksCard.tsx';
import { EmptyBench } from '../panels/job/EmptyBench.tsx';
import { JobHead } from '../panels/job/JobHead.tsx';
import { RecentSlip } from '../panels/job/RecentList.tsx';
import { NewBay } from '../panels/newBay/NewBay.tsx';
import { KeyList } from '../panels/notes/KeyList.tsx';
import { WorkStrip } from '../panels/notes/WorkStrip.tsx';
import { PaperPreview } from '../panels/papers/PaperPreview.tsx';
import { PapersCard } from '../panels/papers/PapersCard.tsx';
import { DrawerPull } from '../panels/parts/DrawerPull.tsx';
import { PartsDrawer } from '../panels/parts/PartsDrawer.tsx';
import { PortsCard } from '../panels/ports/PortsCard.tsx';
import { RunCard } from '../panels/runs/RunCard.tsx';
import { RunList } from '../panels/runs/RunList.tsx';
import { StraightView } from '../panels/straightView/StraightView.tsx';
import { actionFor, type KeyField } from '../state/actionFor.ts';
import type { Bench } from '../state/bench.ts';
import type { Step } from '../state/sessionStore.ts';
import { BenchContext, useBench, useDocument, useDrawer, useSession } from '../state/useBench.ts';
import { BayPlace } from './BayPlace.tsx';

const CARDS: Record<Step, React.ComponentType> = {
  bay: BayCard,
  ports: PortsCard,
  runs: RunCard,
  checks: ChecksCard,
  papers: PapersCard,
  bench: BenchCard,
};

/** The whole window. */
export function BenchWindow({ bench }: { bench: Bench }) {
  useKeys(bench);
  useDroppedScan(bench);
  return (
    <BenchContext value={bench}>
      <Benchtop />
      <KeyList />
    </BenchContext>
  );
}

function Benchtop() {
  const isOpen = useDocument((state) => state.open !== null);
  const asking = useStore(useBench().onNewBay, ({ look }) => look !== null);
  const step = useSession((session) => session.step);
  const drawn = useDrawer((drawer) => drawer.isOpen);
  const shown = isOpen && !asking;
  const Card = CARDS[step];
  return (
    <div className={shown ? `window${drawn ? ' window-drawn' : ''}` : 'window window-empty'}>
      <JobHead />
      <main className="bay">
        {asking ? <NewBay /> : isOpen ? <BayPlace /> : <EmptyBench />}
        {shown && step === 'papers' && <PaperPreview />}
        <WorkStrip />
        {shown && <DrawerPull />}
        {shown && <RecentSlip />}
        <HandReadout />
      </main>
      {shown && (
        <>
          <aside className="side" aria-label="Runs and values">
            <RunList />
            <Card />
          </aside>
          {step !== 'papers' && <StraightView />}
          <PartsDrawer />
        </>
      )}
    </div>
  );
}

/** One listener for all keys; a key that a field takes belongs to the field. */
function useKeys(bench: Bench): void {
  useEffect(() => {
    const press = (event: KeyboardEvent): void => {
      const action = actionFor(event, fieldOf(event.target));
      if (action === undefined || event.defaultPrevented) return;
      event.preventDefault();
      action.act(bench);
    };
    window.addEventListener('keydown', press);
    return () => window.removeEventListener('keydown', press);
  }, [bench]);
}

/** Fields that take letters; a slider or a tick does not. */
const TYPED_IN = 'input:not([type="range"], [type="checkbox"], [type="radio"]), select, textarea';

/** Fields that arrows move. */
const MOVED = 'input:is([type="range"], [type="radio"]), [role="slider"]';

function fieldOf(target: EventTarget | null): KeyField {
  if (!(target instanceof Element)) return 'none';
  return target.closest(TYPED_IN) !== null ? 'typed' : target.closest(MOVED) !== null ? 'moved' : 'none';
}

/** A scan dropped anywhere on the window begins a new bay; nothing dropped ever leaves the window for the file itself. */
function useDroppedScan({ onNewBay, jobs }: Bench): void {
  useEffect(() => {
    const over = (event: DragEvent): void => event.preventDefault();
    const drop = (event: DragEvent): void => {
      event.preventDefault();
      const files = [...(event.dataTransfer?.files ?? [])];
      if (files.length === 0 || jobs.getState().current !== null) return;
      void Promise.all(
        files.map(async (file) => ({ path: file.name, bytes: new Uint8Array(await file.arrayBuffer()) })),
      ).then(onNewBay.begin, () =>
        jobs.tell('Nothing was dropped that can be read', ['Drop the mesh files themselves, not a folder.']),
      );
    };
    window.addEventListener('dragover', over);
    window.addEventListener('drop', drop);
    return () => {
      window.removeEventListener('dragover', over);
      window.removeEventListener('drop', drop);
    };
  }, [onNewBay, jobs]);
}
