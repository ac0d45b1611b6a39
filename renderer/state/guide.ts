import { createStore } from 'zustand/vanilla';
import type { DocumentStore } from './documentStore.ts';
import type { HoverStore, SessionStore } from './sessionStore.ts';

/** One thing to do on a first lay, and how it is known to be done. */
export interface GuideStep {
  readonly title: string;
  readonly words: string;
  /** absent = read it and go on */
  readonly isDone?: (bench: GuidedBench) => boolean;
}

/** What the guide looks at; it changes nothing but what the user does. */
export interface GuidedBench {
  readonly document: DocumentStore;
  readonly session: SessionStore;
  readonly hover: HoverStore;
}

/** The run of the example that the first lay is of: two angled ends, so that there is a clock to set. */
const RUN = 'cooler-feed';

/** A first lay on the example bay, in the order of the job. */
export const GUIDE_STEPS: readonly GuideStep[] = [
  {
    title: 'Walk round the bay',
    words:
      'Drag to turn it, the wheel to come nearer; or the keys a, d, w, s and +, -. Nothing here can be broken: every step can be taken back.',
  },
  {
    title: 'Choose “Pump to oil cooler”',
    words: 'In the list of runs on the right. Tags show its END A and END B in the bay.',
    isDone: ({ session }) => session.getState().run === RUN,
  },
  {
    title: 'Lay it',
    words:
      'Press “Lay this run”. The program looks for a way that keeps bend and clearance, then lets the hose go until it lies still.',
    isDone: (bench) => layOf(bench) !== undefined,
  },
  {
    title: 'Read the straight hose',
    words:
      'Below, the hose lies straight as it will on your bench. Point along it: the same place is marked in the bay, with what it is near to.',
    isDone: ({ hover }) => hover.getState().place?.from === 'straight-view',
  },
  {
    title: 'See what was found',
    words:
      'Step 4, Checks. Press a finding to fly to it. A “stop” forbids cutting; each says by whose word, and what would mend it.',
    isDone: ({ session }) => session.getState().step === 'checks',
  },
  {
    title: 'Pull the hose',
    words:
      'Back in step 3, take the hose with the pointer, pull it aside and let go. It is laid anew by a waypoint there. (By keyboard: v puts one.)',
    isDone: ({ document }) =>
      (document.getState().open?.history.present.runs.find(({ id }) => id === RUN)?.supports.length ?? 0) > 0,
  },
  {
    title: 'Take it back',
    words: 'Ctrl Z, or the arrow at the top. The hose lies as it did before.',
    isDone: ({ document }) =>
      document.getState().open?.history.present.runs.find(({ id }) => id === RUN)?.supports.length === 0,
  },
  {
    title: 'See the paper',
    words:
      'Step 5. The build sheet says where to cut and how to clock the ends, with a strip to wrap round the hose. This one is of example data: not to be built.',
    isDone: ({ session }) => session.getState().step === 'papers',
  },
  {
    title: 'That is the whole job',
    words:
      'For your own bay: “Open another”, or drop a scan on this window. The list of all keys is behind the question mark.',
  },
];

function layOf({ document }: GuidedBench) {
  return document.getState().open?.report?.lays.find(({ run }) => run === RUN);
}

/** The guide on its way: number of the step, `null` = there is none. */
export function createGuide() {
  return createStore<{ readonly at: number | null }>(() => ({ at: null }));
}

export type Guide = ReturnType<typeof createGuide>;

/** Goes on by itself whenever what a step asks is done. Answers what stops it. */
export function followGuide(guide: Guide, bench: GuidedBench): () => void {
  const look = (): void => {
    const { at } = guide.getState();
    const step = at === null ? undefined : GUIDE_STEPS[at];
    if (at !== null && step?.isDone?.(bench) === true) guide.setState({ at: at + 1 });
  };
  const stops = [guide, bench.document, bench.session, bench.hover].map((store) => store.subscribe(look));
  return () => {
    for (const stop of stops) stop();
  };
}
