import { createStore } from 'zustand/vanilla';
import { dot, sub, type Vec3 } from '../../shared/base/vec3.ts';
import { type Aim, type HandStore, NO_TOOL } from './handStore.ts';

/** A place that is measured from or to. */
export interface MeasuredPlace {
  readonly point: Vec3;
  readonly part: string;
  /** set where it is the middle of a round rim */
  readonly rimRadiusMm?: number;
}

export interface MeasureState {
  readonly from: MeasuredPlace | null;
  readonly to: MeasuredPlace | null;
}

/** A distance in the bay, mm: straight, and along its axes as far as +x, +y, +z from the first place. */
export interface Measured {
  readonly straightMm: number;
  readonly alongMm: Vec3;
}

const NONE: MeasureState = { from: null, to: null };

/** Measuring between two places of the bay. */
export function createOnMeasure(hand: HandStore) {
  const store = createStore<MeasureState>(() => NONE);
  // Whatever takes the caliper out of the hand takes its marks away.
  hand.subscribe(({ tool }, before) => {
    if (before.tool.kind === 'measure' && tool.kind !== 'measure') store.setState(NONE);
  });
  return {
    ...store,
    begin: (): void => {
      store.setState(NONE);
      hand.take({ kind: 'measure' });
    },
    /** The first place, then the second; one more begins anew. */
    take: (aim: Aim): void => {
      const place = placeOf(aim);
      const { from, to } = store.getState();
      store.setState(from === null || to !== null ? { from: place, to: null } : { from, to: place });
    },
    clear: (): void => {
      if (hand.getState().tool.kind === 'measure') hand.take(NO_TOOL);
    },
  };
}

export type OnMeasure = ReturnType<typeof createOnMeasure>;

/** The middle of the round rim where there is one, else the place itself. */
function placeOf({ point, part, rim }: Aim): MeasuredPlace {
  return rim ? { point: rim.centre, part, rimRadiusMm: rim.radiusMm } : { point, part };
}

/** How far it is between the two places; nothing before both are there. */
export function measured({ from, to }: MeasureState): Measured | null {
  if (from === null || to === null) return null;
  const alongMm = sub(to.point, from.point);
  return { straightMm: Math.sqrt(dot(alongMm, alongMm)), alongMm };
}
