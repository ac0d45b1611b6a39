import { inchPoundsToNewtonMetres } from '../../base/units.ts';
import type { End, EndMaterial } from '../parts/schema.ts';
import { CLAMP_TORQUE_SOURCE, CLAMP_TORQUES } from './clampTorque.ts';
import { FLATS, TORQUE_TABLES, type TorqueTable } from './torqueTables.ts';

/** What one published table says of a nut. */
export interface NutTorque {
  readonly table: Pick<TorqueTable, 'id' | 'name' | 'source' | 'lubricated'>;
  readonly leastNm: number;
  readonly mostNm: number;
}

/** What is published of a nut, each with its table's name; none = nothing was found for its seat or size. */
export interface NutAdvice {
  /** the end's own figure, N.m, with the source of its row: it comes before every table */
  readonly own?: { readonly torqueNm: number; readonly source: string };
  readonly torques: readonly NutTorque[];
  readonly flats?: { readonly least: number; readonly most: number; readonly name: string; readonly source: string };
  /** what no table settles, in a sentence */
  readonly note?: string;
}

const SEAT = 'flare-37';

/** What of an end says how it is tightened. */
export type TightenedEnd = Pick<End, 'seat' | 'dash' | 'material'> &
  Partial<Pick<End, 'form' | 'joint' | 'torqueNm' | 'source'>>;

/**
 * The torque of a hose end's nut by every published table that fits, N.m: for 37 degree flares, by dash size and by the softer
 * metal of the two. mate: metal of what it is screwed on, where it is known. Published sets differ by two to one, so none is chosen:
 * the part's own maker decides, and its figure in the user's table comes first. Of a barb, and of an end whose hose is clamped: the worm-drive clamp over it. Flats are counted from where the nut seats.
 */
export function nutTorque(end: TightenedEnd, mate?: EndMaterial): NutAdvice {
  const { torqueNm, source = '' } = end;
  const own = torqueNm === undefined ? {} : { own: { torqueNm, source } };
  if (end.form === 'barb') return { ...own, ...CLAMPED };
  if (end.joint === 'clamped') return withClamps(nutTorque({ ...end, joint: 'push-on' }, mate));
  if (end.seat !== SEAT)
    return { ...own, torques: [], note: `No torque was found published for the seat ${end.seat}: go by its maker.` };
  const soft = softer(end.material, mate);
  const torques = TORQUE_TABLES.filter((table) => table.metal === undefined || table.metal === metalOf(soft)).flatMap(
    (table): NutTorque[] => {
      const range = table.byDash[end.dash];
      if (range === undefined) return [];
      const [leastNm, mostNm] = table.unit === 'N.m' ? range : range.map(inchPoundsToNewtonMetres);
      return [{ table, leastNm: leastNm as number, mostNm: mostNm as number }];
    },
  );
  const turned = FLATS.byDash[end.dash];
  const note = noteOf(end.material, mate);
  return {
    ...own,
    torques,
    ...(turned === undefined
      ? {}
      : { flats: { least: turned[0], most: turned[1], name: FLATS.name, source: FLATS.source } }),
    ...(note === undefined ? {} : { note }),
  };
}

/** Of a nut whose hose is held by clamps both are tightened. */
function withClamps(nut: NutAdvice): NutAdvice {
  const note = [nut.note, CLAMPED.note].filter((part) => part !== undefined).join(' ');
  return { ...nut, torques: [...nut.torques, ...CLAMPED.torques], note };
}

/** Of a barb nothing turns but the clamp over it. */
const CLAMPED: NutAdvice = {
  torques: CLAMP_TORQUES.map(({ bandMm, newHose: [aim, miss] }) => ({
    table: {
      id: `army-worm-clamp-${bandMm}`,
      name: `Army, worm-drive clamp with a band of ${bandMm} mm, new hose`,
      source: CLAMP_TORQUE_SOURCE,
      lubricated: false,
    },
    leastNm: inchPoundsToNewtonMetres(aim - miss),
    mostNm: inchPoundsToNewtonMetres(aim + miss),
  })),
  note: 'A worm-drive clamp is set past the bead, once more and less after the first heat; hose shows beyond it all round.',
};

/** How a metal gives under a thread, softest first. */
const SOFTNESS: readonly EndMaterial[] = ['aluminium', 'brass', 'steel', 'stainless'];

function softer(one: EndMaterial, other: EndMaterial | undefined): EndMaterial {
  if (other === undefined) return one;
  return SOFTNESS.indexOf(one) <= SOFTNESS.indexOf(other) ? one : other;
}

/** Stainless goes by the steel tables (common practice, no source). */
function metalOf(material: EndMaterial): EndMaterial {
  return material === 'stainless' ? 'steel' : material;
}

function noteOf(end: EndMaterial, mate: EndMaterial | undefined): string | undefined {
  if (end === 'brass' || mate === 'brass')
    return 'Brass: a workshop manual halves the torque of steel for non-ferrous fittings (easymanua.ls/perkins/2800/manual?p=33).';
  if (mate !== undefined && metalOf(mate) !== metalOf(end))
    return `${end} on ${mate}: no rule was found for mixed metals; the softer one's table is the usual choice (common practice, no source).`;
  return undefined;
}
