import { createStore } from 'zustand/vanilla';
import { fittingOrder } from '../../shared/document/lay/fittingOrder.ts';
import type { LayReport } from '../../shared/document/lay/schema.ts';
import type { DocumentStore } from './documentStore.ts';
import type { SessionStore } from './sessionStore.ts';

/** ms that each hose is looked at while the fitting plays by itself. */
export const FITTING_STEP_MS = 2500;

interface FittingNeeds {
  readonly document: DocumentStore;
  readonly session: SessionStore;
}

export interface FittingState {
  /** hoses that are on in the bay; `null` = all of them, none is being fitted */
  readonly on: number | null;
  readonly plays: boolean;
}

/** The runs whose hose can be shown, in the order in which they are fitted. */
export function fittingSequence(report: LayReport | null): readonly string[] {
  if (report === null) return [];
  const shown = new Set(report.lays.filter(({ centreline }) => centreline.points.length > 1).map(({ run }) => run));
  return fittingOrder(report).order.filter((run) => shown.has(run));
}

/** The hoses going on in the bay one after the other, by hand or by itself. Each is chosen as it goes on. */
export function createOnFitting({ document, session }: FittingNeeds) {
  const store = createStore<FittingState>(() => ({ on: null, plays: false }));
  let next: ReturnType<typeof setTimeout> | undefined;
  const sequence = (): readonly string[] => fittingSequence(document.getState().open?.report ?? null);

  const show = (on: number): void => {
    const runs = sequence();
    if (runs.length === 0) return;
    const kept = Math.min(runs.length, Math.max(0, on));
    const run = runs[kept - 1];
    store.setState({ on: kept });
    if (run !== undefined) session.choose(run);
  };
  const pause = (): void => {
    clearTimeout(next);
    store.setState({ plays: false });
  };
  const tick = (): void => {
    show((store.getState().on ?? 0) + 1);
    if ((store.getState().on ?? 0) >= sequence().length) pause();
    else next = setTimeout(tick, FITTING_STEP_MS);
  };
  /** All hoses again. */
  const leave = (): void => {
    pause();
    store.setState({ on: null });
  };
  document.subscribe(({ open }, before) => {
    if (open?.report !== before.open?.report && store.getState().on !== null) leave();
  });
  return {
    ...store,
    /** So many hoses on, and no playing. */
    to: (on: number): void => {
      pause();
      show(on);
    },
    /** One hose more or one less; the first step from all of them begins with an empty bay. */
    step: (by: 1 | -1): void => {
      pause();
      const { on } = store.getState();
      if (on === null) show(by > 0 ? 1 : sequence().length - 1);
      else show(on + by);
    },
    /** Plays on from where it is; from the beginning once all are on. */
    play: (): void => {
      const runs = sequence();
      if (runs.length === 0) return;
      const { on } = store.getState();
      if (on === null || on >= runs.length) store.setState({ on: 0 });
      store.setState({ plays: true });
      next = setTimeout(tick, FITTING_STEP_MS / 2);
    },
    pause,
    leave,
  };
}
