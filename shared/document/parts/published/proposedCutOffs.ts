import type { EndRow } from '../schema.ts';
import { PUBLISHED_CUT_OFFS } from './cutOffs.ts';
import type { PublishedCutOff } from './schema.ts';

/** A published figure for an end of the size and kind, and what may be made of it. */
export interface CutOffOffer {
  readonly published: PublishedCutOff;
  /** mm. C of one such fitting; absent = the figure is only for comparing */
  readonly cutOffMm?: number;
  /** what it is, and that it is not the user's own fitting */
  readonly words: string;
}

type Asked = Pick<EndRow, 'seat' | 'dash' | 'bendAngleDeg' | 'form'>;

/**
 * Published cut-off factors for 37 degree flare ends of the size, form and angle asked, those that give a C first. Fittings
 * of makers differ by millimetres in the same table, so each is for that fitting only and an own measurement goes before it.
 */
export function proposedCutOffs({ seat, dash, bendAngleDeg, form = 'nut' }: Asked): CutOffOffer[] {
  if (form === 'nut' && seat !== 'flare-37') return [];
  return PUBLISHED_CUT_OFFS.filter(
    (cell) => cell.dash === dash && cell.form === form && cell.bendAngleDeg === bendAngleDeg,
  )
    .map(offer)
    .sort((p, q) => Number(p.cutOffMm === undefined) - Number(q.cutOffMm === undefined));
}

function offer(published: PublishedCutOff): CutOffOffer {
  const { oneFittingMm, printedIn, fitting, table, counts, doubt } = published;
  const printed = `${fitting}, ${table}: ${printedIn.toFixed(2)} in printed`;
  if (doubt !== undefined) return { published, words: `${printed}; doubtful and not used: ${doubt}.` };
  if (oneFittingMm === undefined)
    return {
      published,
      words: `${printed}; for one fitting or for two is not said in what was read, so no C follows.`,
    };
  const how = counts === 'pair' ? ', a pair value: half of it for one' : ' for one';
  return { published, cutOffMm: oneFittingMm, words: `${printed}${how}. Published for that fitting: measure yours.` };
}
