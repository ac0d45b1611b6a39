import type { MendEdit } from '../../document/mends/schema.ts';
import { outsideDiameterMm } from '../../document/parts/outsideDiameter.ts';
import type { End, Hose, Sleeve } from '../../document/parts/schema.ts';
import { adaptersBetween, outletOf, seatsOn } from '../../document/project/adapterFit.ts';
import type { AdapterUse } from '../../document/project/schema.ts';
import { SIDES, type Side } from '../checks/places.ts';
import { SAME_ANGLE_DEG } from './endProposals.ts';
import type { MendContext, Proposal } from './proposal.ts';

/** How many sizes are proposed at most, the nearest first. */
const MOST_LARGER = 3;
const MOST_SMALLER = 1;
/** Rules that ask for a wider bore or a larger size; others of the same checks do not. */
const ASKS_FOR_WIDER = ['drain-least-dash', 'drain-bore', 'turbo-ball-feed-dash', 'turbo-journal-feed-bore'];

/** The same hose in larger sizes with ends of the same angles, and an adapter of the table on each port that needs one. */
export function largerSizes(context: MendContext): Proposal[] {
  const { dash } = context.run.hose;
  return sizes(context, (other) => other > dash).slice(0, MOST_LARGER);
}

/** The same in the next smaller size, which bends tighter and needs less room. */
export function smallerSizes(context: MendContext): Proposal[] {
  const { dash } = context.run.hose;
  return sizes(context, (other) => other < dash).slice(0, MOST_SMALLER);
}

/** Larger sizes for findings that ask for a wider bore. */
export function largerWhereAsked(context: MendContext): Proposal[] {
  return ASKS_FOR_WIDER.includes(context.finding.rule) ? largerSizes(context) : [];
}

function sizes(context: MendContext, suits: (dash: number) => boolean): Proposal[] {
  const { run, tables } = context;
  if (run.run.cutLengthMm !== undefined || run.run.asBuilt !== undefined) return [];
  const now = run.hose.dash;
  const dashes = [...new Set(tables.hoses.map(({ dash }) => dash))].filter(suits);
  return dashes
    .toSorted((p, q) => Math.abs(p - now) - Math.abs(q - now))
    .flatMap((dash) => inSize(context, dash) ?? []);
}

type SizeEdit = Extract<MendEdit, { kind: 'size' }>;
type SizedEnd = SizeEdit['a'];

/** The run in another size; undefined where the tables have not all that it takes. */
function inSize(context: MendContext, dash: number): Proposal | undefined {
  const { run, tables } = context;
  const hose = mostAlike(
    run.hose,
    tables.hoses.filter((one) => one.dash === dash),
  );
  if (hose === undefined) return undefined;
  const sleeve = run.sleeve === undefined ? undefined : closestSleeve(hose, tables.sleeves);
  const [a, b] = SIDES.map((side) => sizedEnd(context, side, dash)) as [SizedEnd?, SizedEnd?];
  if (a === undefined || b === undefined || (run.sleeve !== undefined && sleeve === undefined)) return undefined;
  const edit: SizeEdit = {
    kind: 'size',
    hose: hose.id,
    a,
    b,
    ...(sleeve === undefined ? {} : { sleeve: sleeve.id }),
    clamps: sizedClamps(context, hose, sleeve),
  };
  const adapters = [a, b].flatMap(({ adapters = [] }) => adapters.slice(-1).map(({ adapter }) => adapter));
  const beside =
    adapters.length === 0 ? '' : ` and ${adapters.length === 1 ? 'an adapter on its port' : 'adapters on its ports'}`;
  const toGet = [hose.id, a.end, b.end, ...adapters, ...(sleeve === undefined ? [] : [sleeve.id])];
  return { edit, words: `A -${dash} hose, ${hose.name}, with its ends${beside}`, how: 'anew', change: 7, toGet };
}

function mostAlike(now: Hose, hoses: readonly Hose[]): Hose | undefined {
  const unlike = (hose: Hose): number => Number(hose.core !== now.core) * 2 + Number(hose.cover !== now.cover);
  return hoses.toSorted((p, q) => unlike(p) - unlike(q) || (p.id < q.id ? -1 : 1))[0];
}

function closestSleeve(hose: Hose, sleeves: readonly Sleeve[]): Sleeve | undefined {
  const bareMm = outsideDiameterMm(hose);
  return sleeves
    .filter(({ insideDiameterMm }) => insideDiameterMm >= bareMm)
    .toSorted((p, q) => p.insideDiameterMm - q.insideDiameterMm || (p.id < q.id ? -1 : 1))[0];
}

/** An end of the same angle in this size, of the same make first, that goes on the port with at most one adapter put on or changed. */
function sizedEnd({ run, tables }: MendContext, side: Side, dash: number): SizedEnd | undefined {
  const { end: now } = run[side];
  const unlike = (end: End): number => Number(end.material !== now.material) * 2 + Number(end.joint !== now.joint);
  const ends = tables.ends
    .filter((end) => end.dash === dash && Math.abs(end.bendAngleDeg - now.bendAngleDeg) < SAME_ANGLE_DEG)
    .toSorted((p, q) => unlike(p) - unlike(q));
  for (const end of ends) {
    const adapters = stackFor(run[side], end, tables.adapters);
    if (adapters !== undefined) return { end: end.id, ...(adapters === 'as it is' ? {} : { adapters }) };
  }
  return undefined;
}

/** The adapters that a port then has, from the part outwards; undefined where the table has none that joins the two. */
function stackFor(
  { port, stack }: MendContext['run']['a'],
  end: End,
  table: MendContext['tables']['adapters'],
): AdapterUse[] | 'as it is' | undefined {
  if (seatsOn(port, end)) return 'as it is';
  const fitted = stack?.adapters ?? [];
  const uses = fitted.map(({ use }) => use);
  const last = fitted.at(-1);
  const below = fitted.at(-2);
  if (stack !== undefined && last !== undefined && last.adapter.form !== 'tee') {
    const on = below === undefined ? stack.bare : outletOf(below);
    const other = adaptersBetween(on, end, table).find(
      ({ form, bendAngleDeg }) => form === last.adapter.form && bendAngleDeg === last.adapter.bendAngleDeg,
    );
    if (other !== undefined) return [...uses.slice(0, -1), { ...last.use, adapter: other.id }];
  }
  const more = adaptersBetween(port, end, table).find(({ form, bendAngleDeg }) => form !== 'tee' && bendAngleDeg === 0);
  return more === undefined ? undefined : [...uses, { adapter: more.id, outlet: 'straight' }];
}

/** What clamps of the table then hold the hose; one that none of the table fits holds it without a name. */
function sizedClamps({ run, tables }: MendContext, hose: Hose, sleeve: Sleeve | undefined): SizeEdit['clamps'] {
  const diameterMm = outsideDiameterMm(hose, sleeve);
  const part = tables.clamps.find((c) => c.holdsFromMm <= diameterMm && diameterMm <= c.holdsToMm)?.id;
  return run.run.supports
    .filter((support) => support.part !== undefined)
    .map(({ id }) => ({ support: id, ...(part === undefined ? {} : { part }) }));
}
