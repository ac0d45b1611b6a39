import { createStore } from 'zustand/vanilla';
import { addScaled, scale, type Vec3, ZERO } from '../../shared/base/vec3.ts';
import type { DesktopApi } from '../../shared/desktop/contract.ts';
import { cutOffMm } from '../../shared/document/parts/cutOff.ts';
import { type ResolvedEnd, resolveProject } from '../../shared/document/project/resolve.ts';
import { parsePathPoints } from '../../shared/document/straightened/parsePathPoints.ts';
import type { Straightened } from '../../shared/document/straightened/schema.ts';
import type { DocumentStore } from './documentStore.ts';
import { type Aim, type HandStore, NO_TOOL } from './handStore.ts';
import type { JobsStore } from './jobsStore.ts';
import type { OnBuilt } from './onBuilt.ts';
import { SAFE_WORDS } from './safeWords.ts';
import type { SessionStore } from './sessionStore.ts';

/** A place picked on the surface of a rod. From a file of points along the axis the normal is zero. */
export interface RodPick {
  readonly point: Vec3;
  readonly normal: Vec3;
}

export interface RodState {
  /** the run that the rod stands for; `null` = no rod is being read */
  readonly run: string | null;
  readonly picks: readonly RodPick[];
  readonly diameterMm: number;
  /** where the rod was bent to at its ends */
  readonly reach: 'shoulders' | 'seats';
  readonly straightened: Straightened | null;
}

/** mm. The welding rod that shops bend. */
const USUAL_ROD_MM = 3;
/** Fewer points than this are no path. */
export const LEAST_PICKS = 3;
const NONE: RodState = { run: null, picks: [], diameterMm: USUAL_ROD_MM, reach: 'shoulders', straightened: null };

interface RodNeeds {
  readonly document: DocumentStore;
  readonly session: SessionStore;
  readonly jobs: JobsStore;
  readonly hand: HandStore;
  readonly desktop: DesktopApi;
  readonly onBuilt: OnBuilt;
}

/** A bent rod that stands for the chosen run's hose: picked on its scan or read from a file, then straightened. */
export function createOnRod({ document, session, jobs, hand, desktop, onBuilt }: RodNeeds) {
  const store = createStore<RodState>(() => NONE);
  /** Whatever changes the rod makes its numbers old. */
  const change = (to: Partial<RodState>): void => store.setState({ ...to, straightened: null });

  const outlets = (runId: string): { a: ResolvedEnd; b: ResolvedEnd } | null => {
    const { open } = document.getState();
    const resolved = open === null ? null : resolveProject(open.history.present, open.tables);
    return resolved?.ok === true ? (resolved.value.runs.find(({ run }) => run.id === runId) ?? null) : null;
  };

  return {
    ...store,
    /** Begins a rod for the chosen run and takes the pointer that picks along it. */
    begin: (): void => {
      const { run } = session.getState();
      if (run === null) return;
      session.goTo('runs');
      if (store.getState().run !== run) store.setState({ ...NONE, run, diameterMm: store.getState().diameterMm });
      hand.take({ kind: 'rod' });
    },
    pick: ({ point, normal }: Aim): void => change({ picks: [...store.getState().picks, { point, normal }] }),
    takeBack: (): void => change({ picks: store.getState().picks.slice(0, -1) }),
    set: (to: Partial<Pick<RodState, 'diameterMm' | 'reach'>>): void => change(to),
    clear: (): void => {
      store.setState({ ...NONE, diameterMm: store.getState().diameterMm });
      if (hand.getState().tool.kind === 'rod') hand.take(NO_TOOL);
    },
    /** Reads a file of points along the rod's axis in place of what was picked. */
    read: async (): Promise<void> => {
      const { run } = session.getState();
      const files = await desktop.chooseFiles();
      if (files === null || run === null) return;
      if (!files.ok) return jobs.tellProblems('The points could not be read', files.problems, SAFE_WORDS.pointsKept);
      const [file] = files.value;
      if (file === undefined) return;
      const points = parsePathPoints(new TextDecoder().decode(file.bytes), 'mm');
      if (!points.ok)
        return jobs.tellProblems(`${file.path} is no row of points`, points.problems, SAFE_WORDS.pointsKept);
      if (hand.getState().tool.kind === 'rod') hand.take(NO_TOOL);
      change({ run, picks: points.value.map((point) => ({ point, normal: ZERO })) });
    },
    straighten: async (): Promise<void> => {
      const { run, picks, diameterMm, reach } = store.getState();
      const ends = run === null ? null : outlets(run);
      const clockTolerance = document.getState().open?.history.present.paperwork?.clockTolerance;
      if (ends === null) return;
      const done = await jobs.work('Straightening the rod', 'straightenRod', {
        points: picks.map((pick) => onAxis(pick, diameterMm)),
        ...outletOf('outletA', ends.a),
        ...outletOf('outletB', ends.b),
        ...(clockTolerance === undefined ? {} : { clockTolerance }),
        cutOffMm: reach === 'shoulders' ? { a: 0, b: 0 } : { a: cutOffMm(ends.a.end), b: cutOffMm(ends.b.end) },
      });
      if (done !== null && store.getState().picks === picks) store.setState({ straightened: done });
    },
    /** States the straightened rod as the run's hose as measured, so that the bench says whether it fits; one step back. */
    takeAsBuilt: async (): Promise<void> => {
      const { run, straightened, picks } = store.getState();
      if (run === null || straightened === null) return;
      const { clock, cutLengthMm } = straightened;
      const tenth = (n: number): number => Math.round(n * 10) / 10;
      await onBuilt.measured(run, {
        cutLengthMm: tenth(cutLengthMm),
        ...(clock.kind === 'angle' ? { clockDeg: tenth(clock.deg) } : {}),
        note: `from a bent rod, ${picks.length} points`,
      });
    },
  };
}

export type OnRod = ReturnType<typeof createOnRod>;

/** The place on the rod's axis under a place on its surface. */
export function onAxis({ point, normal }: RodPick, diameterMm: number): Vec3 {
  return addScaled(point, normal, -diameterMm / 2);
}

/** An angled end's outlet points from its bend to its seat: into the port. A straight end has none. */
function outletOf<N extends string>(name: N, { port, end }: ResolvedEnd): Partial<Record<N, Vec3>> {
  return end.bendAngleDeg === 0 ? {} : ({ [name]: scale(port.axis, -1) } as Record<N, Vec3>);
}
