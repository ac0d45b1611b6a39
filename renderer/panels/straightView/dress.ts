import type { Lay } from '../../../shared/document/lay/schema.ts';
import { SLEEVE_REACH_MM, socketPastShoulderMm } from '../../../shared/document/lay/sleeveCut.ts';
import type { PartTables } from '../../../shared/document/parts/schema.ts';
import type { Run } from '../../../shared/document/project/schema.ts';

/** A stretch along the straight hose, mm from shoulder A; below zero and beyond the cut length it lies on the ends. */
export interface Along {
  readonly fromMm: number;
  readonly toMm: number;
}

/** Sizes of what is on the straight hose, mm. */
export interface Dress {
  /** the hose itself, without its sleeve */
  readonly hoseDiameterMm: number;
  readonly collars: Readonly<Record<'a' | 'b', Along & { readonly diameterMm: number }>>;
  /** undefined = no sleeve */
  readonly sleeve: (Along & { readonly diameterMm: number }) | undefined;
  /** width along the hose of each clamp whose part is stated, by the support's id */
  readonly clampWidthsMm: ReadonlyMap<string, number>;
}

/** A collar whose diameter no part tells, as a share of the hose. */
const USUAL_COLLAR = 1.3;

/**
 * How the straight hose is dressed: each collar from its mouth as far past the shoulder as its length says, the sleeve over
 * both by its reach, each clamp as wide as its part. The collars' mouths are the lay's own.
 */
export function dressOf(
  lay: Lay,
  run: Run | undefined,
  tables: PartTables,
  mouthsMm: Readonly<Record<'a' | 'b', number>>,
): Dress {
  const endOf = (tag: 'a' | 'b') => tables.ends.find(({ id }) => id === run?.[tag].end);
  const hose = tables.hoses.find(({ id }) => id === run?.hose);
  const hoseDiameterMm = Math.min(lay.outsideDiameterMm, hose?.outsideDiameterMm ?? lay.outsideDiameterMm);
  const past = (tag: 'a' | 'b'): number => {
    const end = endOf(tag);
    return end === undefined ? 0 : socketPastShoulderMm(end);
  };
  const diameterMm = (tag: 'a' | 'b'): number => endOf(tag)?.collarDiameterMm ?? hoseDiameterMm * USUAL_COLLAR;
  const reachMm = lay.sleeve?.reachMm ?? SLEEVE_REACH_MM;
  const clamps = (run?.supports ?? []).flatMap(({ id, part }): [string, number][] => {
    const clamp = tables.clamps.find((row) => row.id === part);
    return clamp === undefined ? [] : [[id, clamp.widthMm]];
  });
  return {
    hoseDiameterMm,
    collars: {
      a: { fromMm: -past('a'), toMm: mouthsMm.a, diameterMm: diameterMm('a') },
      b: { fromMm: lay.cutLengthMm - mouthsMm.b, toMm: lay.cutLengthMm + past('b'), diameterMm: diameterMm('b') },
    },
    sleeve:
      run?.sleeve === undefined
        ? undefined
        : {
            fromMm: -past('a') - reachMm,
            toMm: lay.cutLengthMm + past('b') + reachMm,
            diameterMm: lay.outsideDiameterMm,
          },
    clampWidthsMm: new Map(clamps),
  };
}
