import { addScaled, length, lerp, sub, triple, unit, type Vec3 } from '../../base/vec3.ts';
import type { Clearance, Lay } from '../../document/lay/schema.ts';
import { outsideDiameterMm } from '../../document/parts/outsideDiameter.ts';
import type { Support } from '../../document/project/schema.ts';
import { lengthText } from '../../document/wording/quantityText.ts';
import { mouthPlace, placeAt } from '../checks/places.ts';
import type { MendContext, Proposal } from './proposal.ts';

/** mm. What a proposed support is put further off than is missing, since the hose beside it comes nearer again. */
const SPARE_MM = 4;
/** A second try this many times as far off, since between supports a hose comes back. */
const FURTHER = 2;
/** mm. Nearer to a mouth than this nothing holds a hose but its end. */
const FROM_MOUTH_MM = 30;
/** mm. Half the stretch over which the direction of the hose is read. */
const READ_MM = 5;
/** mm. A hose this near to a thing has no side of it to be moved to. */
const ON_THE_THING_MM = 1e-3;
/** mm. How far a clamp is slid at most, either way. */
const SLIDE_MM = 60;
/** Rules that ask for a wider hole. */
const HOLE_RULES = ['hole-over-hose', 'hole-over-end'];
/** Points to a hundredth of a mm, directions to a millionth. */
const POINT_PARTS = 100;
const AXIS_PARTS = 1e6;

/** What the hose comes too near to is stood off from: a waypoint led further away, or a clamp there. */
export function standOff(context: MendContext): Proposal[] {
  const { finding, lay } = context;
  const off = offFrom(context);
  if (off === undefined || !isFree(lay, off.near.at.arcLengthMm)) return [];
  const { near, away, missing } = off;
  return [missing, FURTHER * missing].flatMap((byMm) => {
    const at = addScaled(near.at.point, away, byMm);
    const place = near.at.arcLengthMm;
    const led = `led ${lengthText(byMm)} further away, ${lengthText(place)} from shoulder A`;
    const clamp = held(context, [{ kind: 'clamp', at, arcLengthMm: place }], `A clamp ${led},`, 3);
    // A waypoint leads a hose that is laid; it holds none that is carried along.
    if (finding.check === 'rock') return [clamp];
    return [held(context, [{ kind: 'waypoint', at, arcLengthMm: place }], `A waypoint ${led},`, 2), clamp];
  });
}

/** The clamp nearest to what the hose comes too near to, moved away from that thing where it stands. */
export function moveClamp(context: MendContext): Proposal[] {
  const off = offFrom(context);
  const clamp = clampAt(context);
  if (off === undefined || clamp === undefined) return [];
  return [off.missing, FURTHER * off.missing].map((byMm) => {
    const point = rounded(addScaled(clamp.support.point, off.away, byMm), POINT_PARTS);
    const name = clamp.support.name ?? clamp.support.id;
    return changed({ ...clamp.support, point }, `The clamp ${name} moved ${lengthText(byMm)} away`, 2, []);
  });
}

/** The thing that a finding in mm speaks of, the direction from it to the hose, and how much further off the hose should be. */
function offFrom(context: MendContext) {
  const { finding, lay } = context;
  const near = nearThing(context);
  if (near === undefined || finding.unit !== 'mm' || finding.margin >= 0) return undefined;
  const from = sub(near.at.point, near.onThing);
  if (length(from) < ON_THE_THING_MM) return undefined;
  // A hose whose middle is inside the thing comes out by the nearest place of its skin.
  const isInside = near.clearanceMm < -lay.outsideDiameterMm / 2;
  const away = unit(isInside ? sub(near.onThing, near.at.point) : from);
  return { near, away, missing: -finding.margin + SPARE_MM };
}

/** Clamps where nothing holds the hose for longer than the rule has it: evenly, each where the hose is straightest near by. */
export function clampsBetween(context: MendContext): Proposal[] {
  const { lay, finding } = context;
  const holds = [
    mouthPlace(lay, 'a').arcLengthMm,
    ...lay.supports.filter((s) => s.kind !== 'waypoint').map((s) => s.at.arcLengthMm),
    mouthPlace(lay, 'b').arcLengthMm,
  ].toSorted((p, q) => p - q);
  const places = holds.flatMap((to, i) => {
    const from = holds[i - 1] ?? to;
    const count = Math.ceil((to - from) / finding.limit) - 1;
    const step = (to - from) / (count + 1);
    const spareMm = Math.max(0, finding.limit - step) / 2;
    return Array.from({ length: Math.max(0, count) }, (_, k) => straightest(lay, from + step * (k + 1), spareMm));
  });
  if (places.length === 0) return [];
  const where = places.map((mm) => lengthText(mm)).join(', ');
  const words = `${places.length === 1 ? 'A clamp' : `${places.length} clamps`}, ${where} from shoulder A,`;
  const wanted = places.map((mm): Wanted => ({ kind: 'clamp', at: placeAt(lay, mm).point, arcLengthMm: mm }));
  return [held(context, wanted, words, 3)];
}

/** A support that may hold the hose where it should not be, taken off. */
export function letGo({ run }: MendContext): Proposal[] {
  return run.run.supports
    .filter(({ kind }) => kind !== 'pass-through')
    .map((support) => ({
      edit: { kind: 'let-go', support: support.id },
      words: `The ${support.kind} ${support.name ?? support.id} taken off`,
      how: 'anew',
      change: 3,
      toGet: [],
    }));
}

/** A clamp that sits on a bend slid to where the hose is straightest near by. */
export function slideClamp(context: MendContext): Proposal[] {
  const { lay } = context;
  const clamp = clampAt(context);
  if (clamp === undefined) return [];
  const mm = straightest(lay, clamp.arcLengthMm, SLIDE_MM);
  if (!isFree(lay, mm) || mm === clamp.arcLengthMm) return [];
  const point = rounded(placeAt(lay, mm).point, POINT_PARTS);
  const axis = rounded(directionAt(lay, mm), AXIS_PARTS);
  const words = `The clamp slid to ${lengthText(mm)} from shoulder A`;
  return [changed({ ...clamp.support, point, axis }, words, 2, [])];
}

/** Each clamp slid along the hose by these, mm, where one stands too near to what moves. */
const SLIDES_MM = [-SLIDE_MM / 2, SLIDE_MM / 2, -SLIDE_MM, SLIDE_MM];

/** A clamp that stands too near to what moves, or to what else holds the hose, slid along it either way. */
export function slideAway({ run, lay }: MendContext): Proposal[] {
  return run.run.supports
    .filter(({ kind }) => kind === 'clamp')
    .flatMap((support) => {
      const from = lay.supports.find(({ id }) => id === support.id)?.at.arcLengthMm;
      const places = from === undefined ? [] : SLIDES_MM.map((by) => from + by).filter((mm) => isFree(lay, mm));
      return places.map((mm) => {
        const point = rounded(placeAt(lay, mm).point, POINT_PARTS);
        const axis = rounded(directionAt(lay, mm), AXIS_PARTS);
        const name = support.name ?? support.id;
        return changed(
          { ...support, point, axis },
          `The clamp ${name} slid to ${lengthText(mm)} from shoulder A`,
          2,
          [],
        );
      });
    });
}

/** The clamp of the table that holds the hose as thick as it is, in the place of one that does not. */
export function fittingClamp(context: MendContext): Proposal[] {
  const { run, tables } = context;
  const diameterMm = outsideDiameterMm(run.hose, run.sleeve);
  const part = tables.clamps.find((c) => c.holdsFromMm <= diameterMm && diameterMm <= c.holdsToMm);
  const clamp = clampAt(context);
  if (part === undefined || clamp === undefined || clamp.support.part === part.id) return [];
  return [changed({ ...clamp.support, part: part.id }, `${part.name} instead of the clamp there`, 2, [part.name])];
}

/** Clamps of the table that hold the hose as thick as it is and bear more heat than the one there, those that bear most first. */
export function hotterClamp(context: MendContext): Proposal[] {
  const { run, tables } = context;
  const diameterMm = outsideDiameterMm(run.hose, run.sleeve);
  const clamp = clampAt(context);
  const now = tables.clamps.find(({ id }) => id === clamp?.support.part);
  if (clamp === undefined || now === undefined) return [];
  return tables.clamps
    .filter((c) => c.holdsFromMm <= diameterMm && diameterMm <= c.holdsToMm && c.maxTemperatureC > now.maxTemperatureC)
    .toSorted((p, q) => q.maxTemperatureC - p.maxTemperatureC || (p.id < q.id ? -1 : 1))
    .map((part) =>
      changed({ ...clamp.support, part: part.id }, `${part.name} (${part.material}) instead of the clamp there`, 2, [
        part.name,
      ]),
    );
}

/** A clamp, or a waypoint, on the straight line between the mouths at the place that a finding names: for a way that falls or rises unevenly. */
export function evenFall(context: MendContext): Proposal[] {
  const { lay, finding } = context;
  const place = finding.at?.arcLengthMm;
  if (place === undefined || !isFree(lay, place)) return [];
  const [a, b] = [mouthPlace(lay, 'a'), mouthPlace(lay, 'b')];
  const share = (place - a.arcLengthMm) / (b.arcLengthMm - a.arcLengthMm);
  const at = lerp(a.point, b.point, share);
  const where = `${lengthText(place)} from shoulder A, on the straight line between its ends,`;
  return [
    held(context, [{ kind: 'waypoint', at, arcLengthMm: place }], `A waypoint ${where}`, 2),
    held(context, [{ kind: 'clamp', at, arcLengthMm: place }], `A clamp ${where}`, 3),
  ];
}

/** A grommet in an open hole that a hose passes through. */
export function grommet({ run }: MendContext): Proposal[] {
  return run.run.supports
    .filter(({ kind, seal }) => kind === 'pass-through' && seal === 'none')
    .map((support) =>
      changed({ ...support, seal: 'grommet' }, `A grommet in ${support.name ?? 'the pass-through'}`, 2, ['a grommet']),
    );
}

/** A hole as wide as what has to go through it asks, in the place of one that is narrower. */
export function widerHole({ run, lay, finding }: MendContext): Proposal[] {
  if (!HOLE_RULES.includes(finding.rule)) return [];
  const named = lay.supports.find(({ at }) => at.arcLengthMm === finding.at?.arcLengthMm)?.id;
  return run.run.supports.flatMap((support) => {
    const { id, kind, holeMm, name = 'the pass-through' } = support;
    if (id !== named || kind !== 'pass-through' || holeMm === undefined) return [];
    const wideMm = Math.ceil(holeMm - finding.margin);
    return [changed({ ...support, holeMm: wideMm }, `A hole of ${lengthText(wideMm)} for ${name}`, 3, [])];
  });
}

function changed(support: Support, words: string, change: number, toGet: readonly string[]): Proposal {
  return { edit: { kind: 'change-support', support }, words, how: 'near', change, toGet };
}

/** The clamp that the user put nearest to where a finding is. */
function clampAt({ run, lay, finding }: MendContext) {
  const clamps = run.run.supports.flatMap((support) => {
    const laid = lay.supports.find(({ id }) => id === support.id);
    return support.kind !== 'clamp' || laid === undefined ? [] : [{ support, arcLengthMm: laid.at.arcLengthMm }];
  });
  const at = finding.at?.arcLengthMm;
  if (at === undefined) return undefined;
  return clamps.toSorted((p, q) => Math.abs(p.arcLengthMm - at) - Math.abs(q.arcLengthMm - at))[0];
}

interface Wanted {
  readonly kind: 'clamp' | 'waypoint';
  readonly at: Vec3;
  readonly arcLengthMm: number;
}

function held({ run, lay, tables }: MendContext, wanted: readonly Wanted[], words: string, change: number): Proposal {
  const diameterMm = outsideDiameterMm(run.hose, run.sleeve);
  const part = tables.clamps.find((c) => c.holdsFromMm <= diameterMm && diameterMm <= c.holdsToMm);
  const taken = new Set(run.run.supports.map(({ id }) => id));
  const put = wanted.map(({ kind, at, arcLengthMm }) => {
    const id = freshName(`mend-${kind}`, taken);
    taken.add(id);
    const clamped = kind === 'clamp' && part !== undefined ? { part: part.id } : {};
    const axis = kind === 'clamp' ? { axis: rounded(directionAt(lay, arcLengthMm), AXIS_PARTS) } : {};
    const support: Support = { id, kind, point: rounded(at, POINT_PARTS), ...axis, ...clamped };
    return { before: orderAt(run.run.supports, lay, arcLengthMm), support };
  });
  const clamps = wanted.filter(({ kind }) => kind === 'clamp').length;
  const toGet = clamps === 0 ? [] : [`${clamps} x ${part?.name ?? `clamp for ${lengthText(diameterMm)}`}`];
  return { edit: { kind: 'hold', put }, words, how: 'near', change, toGet };
}

/** The thing that a finding speaks of, where the lay comes nearest to it. */
function nearThing({ finding, lay }: MendContext): Clearance | undefined {
  const thing = finding.with;
  if (thing === undefined) return undefined;
  const same = lay.clearances.filter(({ to }) => to.kind === thing.kind && to.id === thing.id);
  const at = finding.at?.arcLengthMm ?? 0;
  const off = (c: Clearance): number => Math.abs(c.at.arcLengthMm - at);
  return same.toSorted((p, q) => off(p) - off(q))[0];
}

function isFree(lay: Lay, arcLengthMm: number): boolean {
  const [from, to] = [mouthPlace(lay, 'a').arcLengthMm, mouthPlace(lay, 'b').arcLengthMm];
  return arcLengthMm > from + FROM_MOUTH_MM && arcLengthMm < to - FROM_MOUTH_MM;
}

/** Where the hose bends least within so many mm of a place; the place itself where no radii are known. */
function straightest(lay: Lay, arcLengthMm: number, withinMm: number): number {
  const { arcLengthMm: lengths = [], radiusMm = [] } = lay.profile ?? {};
  let best = { mm: arcLengthMm, radiusMm: 0 };
  lengths.forEach((mm, i) => {
    const radius = radiusMm[i] ?? 0;
    if (Math.abs(mm - arcLengthMm) <= withinMm && radius > best.radiusMm) best = { mm, radiusMm: radius };
  });
  return best.mm;
}

function directionAt(lay: Lay, arcLengthMm: number): Vec3 {
  return unit(sub(placeAt(lay, arcLengthMm + READ_MM).point, placeAt(lay, arcLengthMm - READ_MM).point));
}

/** The number of the support that a new one comes before. */
function orderAt(supports: readonly Support[], lay: Lay, arcLengthMm: number): number {
  const arcOf = (id: string): number => lay.supports.find((s) => s.id === id)?.at.arcLengthMm ?? 0;
  return supports.filter(({ id }) => arcOf(id) <= arcLengthMm).length;
}

function freshName(stem: string, taken: ReadonlySet<string>): string {
  let n = 1;
  while (taken.has(`${stem}-${n}`)) n++;
  return `${stem}-${n}`;
}

function rounded(v: Vec3, parts: number): [number, number, number] {
  const round = (n: number): number => Math.round(n * parts) / parts + 0;
  return triple([round(v[0]), round(v[1]), round(v[2])]);
}
