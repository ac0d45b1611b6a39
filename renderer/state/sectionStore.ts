import { createStore } from 'zustand/vanilla';
import { addScaled, dot, sub, type Vec3 } from '../../shared/base/vec3.ts';

/** A plane that cuts the bay: what lies on the side that `away` points to is taken off. */
export interface CutPlane {
  readonly point: Vec3;
  /** unit */
  readonly away: Vec3;
}

/** The box that is left of the bay, mm. */
export interface CutBox {
  readonly low: Vec3;
  readonly high: Vec3;
}

export interface SectionState {
  /** the card with the cuts is out */
  readonly isOpen: boolean;
  readonly plane: CutPlane | null;
  readonly box: CutBox | null;
  /** counts requests for a plane that faces the eye, through a place */
  readonly asked: { readonly through: Vec3; readonly serial: number } | null;
}

const WHOLE: SectionState = { isOpen: false, plane: null, box: null, asked: null };

/** How the bay is cut open to look in. Hoses are never cut. A store of its own, since a slider changes it many times a second. */
export function createSectionStore() {
  const store = createStore<SectionState>(() => WHOLE);
  return {
    ...store,
    open: (): void => store.setState({ isOpen: true }),
    shut: (): void => store.setState({ isOpen: false }),
    /** The bay whole again; the card stays out. */
    whole: (): void => store.setState({ plane: null, box: null, asked: null }),
    empty: (): void => store.setState(WHOLE),
    /** Asks the scene, which knows where the eye is, for a plane through a place, square to the look. */
    faceEye: (through: Vec3): void =>
      store.setState(({ asked }) => ({ asked: { through, serial: (asked?.serial ?? 0) + 1 } })),
    setPlane: (plane: CutPlane): void => store.setState({ plane }),
    /** Moves the plane along its own direction: below 0 takes more of the bay away. */
    movePlane: (byMm: number): void =>
      store.setState(({ plane }) =>
        plane === null ? {} : { plane: { ...plane, point: addScaled(plane.point, plane.away, byMm) } },
      ),
    setBox: (box: CutBox | null): void => store.setState({ box }),
  };
}

export type SectionStore = ReturnType<typeof createSectionStore>;

/**
 * mm. A face of the bay that lies in a cut stays: floors and plates often lie along the axes, and their own coordinates
 * are not known finer than this.
 */
export const CUT_LEAVES_MM = 0.01;

/** Whether a place of the bay is taken off by the cuts, so that a look goes through it. */
export function isCutAway({ plane, box }: Pick<SectionState, 'plane' | 'box'>, point: Vec3): boolean {
  if (plane !== null && dot(sub(point, plane.point), plane.away) > CUT_LEAVES_MM) return true;
  return box !== null && [0, 1, 2].some((k) => isOutside(box, point, k as 0 | 1 | 2));
}

function isOutside({ low, high }: CutBox, point: Vec3, k: 0 | 1 | 2): boolean {
  return point[k] < low[k] - CUT_LEAVES_MM || point[k] > high[k] + CUT_LEAVES_MM;
}
