import { createStore } from 'zustand/vanilla';
import { radiansToDegrees } from '../../shared/base/units.ts';
import { angleBetween, cross, dot, length, scale, sub, UP, unit, type Vec3 } from '../../shared/base/vec3.ts';
import { levelBay, rescaleBay } from '../../shared/document/project/resizeBay.ts';
import type { DocumentStore } from './documentStore.ts';
import { type Aim, type HandStore, NO_TOOL } from './handStore.ts';

export interface SquareUpState {
  /** places picked on a face that is truly level, up to three */
  readonly picks: readonly Vec3[];
}

/** What three places say of a face. */
export type FaceReading =
  | { readonly kind: 'few'; readonly missing: number }
  /** they lie on one line, or nearly */
  | { readonly kind: 'line' }
  | { readonly kind: 'face'; readonly up: Vec3; readonly offDeg: number };

/** Corners of a face so slim say nothing of its tilt: height over longest side. */
const SLIMMEST = 0.05;

/** Bringing a bay to its true size and level, by a length and by a face that are known. Each is one step back. */
export function createOnSquareUp({ document, hand }: { readonly document: DocumentStore; readonly hand: HandStore }) {
  const store = createStore<SquareUpState>(() => ({ picks: [] }));
  hand.subscribe(({ tool }, before) => {
    if (before.tool.kind === 'level' && tool.kind !== 'level') store.setState({ picks: [] });
  });
  return {
    ...store,
    begin: (): void => {
      store.setState({ picks: [] });
      hand.take({ kind: 'level' });
    },
    pick: ({ point }: Aim): void =>
      store.setState(({ picks }) => ({ picks: picks.length < 3 ? [...picks, point] : [point] })),
    /** Takes the face that was picked for level. */
    level: (): void => {
      const face = faceOf(store.getState().picks);
      if (face.kind !== 'face') return;
      document.edit('level of the bay', (project) => levelBay(project, face.up));
      hand.take(NO_TOOL);
    },
    /** A length that measures `measuredMm` in the bay is truly `trueMm`. */
    rescale: (measuredMm: number, trueMm: number): void => {
      document.edit('scale of the bay', (project) => rescaleBay(project, trueMm / measuredMm));
      hand.take(NO_TOOL);
    },
  };
}

export type OnSquareUp = ReturnType<typeof createOnSquareUp>;

/** The face through three places: which way it looks, the upward way, and how far that is off the plumb line, in degrees. */
export function faceOf(picks: readonly Vec3[]): FaceReading {
  const [p, q, r] = picks;
  if (p === undefined || q === undefined || r === undefined) return { kind: 'few', missing: 3 - picks.length };
  const normal = cross(sub(q, p), sub(r, p));
  const longest = Math.max(length(sub(q, p)), length(sub(r, p)), length(sub(r, q)));
  if (length(normal) <= SLIMMEST * longest * longest) return { kind: 'line' };
  const up = unit(dot(normal, UP) < 0 ? scale(normal, -1) : normal);
  return { kind: 'face', up, offDeg: radiansToDegrees(angleBetween(up, UP)) };
}
