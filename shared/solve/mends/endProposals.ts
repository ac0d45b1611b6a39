import type { End } from '../../document/parts/schema.ts';
import type { ResolvedRun } from '../../document/project/resolve.ts';
import { SIDES, type Side, sideText } from '../checks/places.ts';
import { shelfFor } from '../endTrial/shelf.ts';
import type { MendContext, Proposal } from './proposal.ts';

/** deg. Bend angles that differ by less are the same angle in two tables. */
export const SAME_ANGLE_DEG = 0.5;
/** How many pairs of ends are proposed at most, those that turn least first. */
const MOST_PAIRS = 12;

/** One end of another bend angle, of those on the shelf that fit: at either end, the nearest angle first, END A before END B. */
export function otherAngles({ run, tables }: MendContext): Proposal[] {
  const others = SIDES.flatMap((side) =>
    othersOf(run, side, tables.ends)
      .toSorted((p, q) => p.bendAngleDeg - q.bendAngleDeg)
      .map((other) => ({ side, other, turned: turn(other, run[side].end) })),
  );
  return others.toSorted((p, q) => p.turned - q.turned).map(({ side, other }) => oneEnd(side, other));
}

/** Both ends of other bend angles, those that turn least together first: for where no single end mends it. */
export function otherPairs({ run, tables }: Pick<MendContext, 'run' | 'tables'>): Proposal[] {
  const pairs = othersOf(run, 'a', tables.ends).flatMap((a) =>
    othersOf(run, 'b', tables.ends).map((b): [End, End] => [a, b]),
  );
  const turned = ([a, b]: [End, End]): number => a.bendAngleDeg + b.bendAngleDeg;
  return pairs
    .toSorted((p, q) => turned(p) - turned(q) || p[0].bendAngleDeg - q[0].bendAngleDeg)
    .slice(0, MOST_PAIRS)
    .map(([a, b]) => bothEnds(a, b));
}

/** Ends of the same bend angle and of another material: at one end, and at both of one material. */
export function otherMaterials({ run, tables }: MendContext): Proposal[] {
  const alike = (side: Side): End[] =>
    tables.ends.filter(
      (e) => e.material !== run[side].end.material && fits(run, side, e) && turn(e, run[side].end) < SAME_ANGLE_DEG,
    );
  const [a, b] = [firstOfEach(alike('a')), firstOfEach(alike('b'))];
  const both = a.flatMap((x) => b.filter((y) => y.material === x.material).map((y) => bothEnds(x, y)));
  return [...a.map((end) => oneEnd('a', end)), ...b.map((end) => oneEnd('b', end)), ...both].map((proposal) => ({
    ...proposal,
    how: 'near',
  }));
}

/** An end whose own clock is stated, and which could turn, is left to the program. */
export function freeClocks({ run }: MendContext): Proposal[] {
  return SIDES.filter((side) => run.run[side].clockDeg !== undefined && run[side].end.turning !== 'fixed').map(
    (side) => ({
      edit: { kind: 'free-clock', side },
      words: `${sideText(side)} turned about its port to where the hose lies best`,
      how: 'anew',
      change: 1,
      toGet: [],
    }),
  );
}

function oneEnd(side: Side, end: End): Proposal {
  return {
    edit: { kind: 'end', side, end: end.id },
    words: `${capital(endText(end))} at ${sideText(side)}`,
    how: 'anew',
    change: 4,
    toGet: [`${end.name} (${end.id})`],
  };
}

function bothEnds(a: End, b: End): Proposal {
  return {
    edit: { kind: 'ends', a: a.id, b: b.id },
    words: `${capital(endText(a))} at END A and ${endText(b)} at END B`,
    how: 'anew',
    change: 6,
    toGet: [a, b].map((end) => `${end.name} (${end.id})`),
  };
}

/** Ends for one side that are of another angle than the one it has. */
function othersOf(run: ResolvedRun, side: Side, table: readonly End[]): End[] {
  return shelfFor(run[side], table).filter((end) => turn(end, run[side].end) >= SAME_ANGLE_DEG);
}

function fits(run: ResolvedRun, side: Side, end: End): boolean {
  return end.dash === run.hose.dash && end.seat === run[side].port.seat;
}

function firstOfEach(ends: readonly End[]): End[] {
  return ends.filter((end, i) => ends.findIndex(({ material }) => material === end.material) === i);
}

function turn(one: End, other: End): number {
  return Math.abs(one.bendAngleDeg - other.bendAngleDeg);
}

function endText({ bendAngleDeg, material }: End): string {
  return bendAngleDeg === 0 ? `a straight ${material} end` : `a ${bendAngleDeg} degree ${material} end`;
}

function capital(text: string): string {
  return `${text[0]?.toUpperCase() ?? ''}${text.slice(1)}`;
}
