import type { Roll } from '../parts/schema.ts';
import { cureMonth } from './cureMonth.ts';

/** A hose to be cut, by the id of its run. mm. */
export interface WantedCut {
  readonly run: string;
  readonly lengthMm: number;
}

/** A roll or an offcut on the shelf, all of one kind of hose. */
export type StockPiece = Pick<Roll, 'id' | 'lengthMm' | 'cureDate' | 'offcut'>;

/** What is cut from one piece, in the order of cutting, and what is left of it after the last cut's kerf. mm. */
export interface PieceCuts {
  readonly piece: StockPiece;
  readonly cuts: readonly WantedCut[];
  readonly leftMm: number;
}

export interface CutPlan {
  /** pieces in the order they are taken from the shelf; those that nothing is cut from are not in it */
  readonly pieces: readonly PieceCuts[];
  /** hoses that no piece holds, or that the others left no room for, longest first */
  readonly notHeld: readonly WantedCut[];
  /** true = every way was looked at, none is better; false = the search gave up at its budget: the best of what it saw, never worse than by hand */
  readonly proven: boolean;
}

/** mm. What a cut-off wheel or a fine saw takes of the hose: common practice, no source. */
export const USUAL_KERF_MM = 3;

/** Places of a hose tried before the search gives up: a fraction of a second. A count, so that the plan is the same on every machine. */
export const CUT_PLAN_BUDGET = 300_000;

/**
 * Which hose is cut from which piece of stock, all of the same kind of hose. Best is, in this order: most hoses; most length of hose;
 * most of it from offcuts, so that least is left of them; most from the piece that is first on the shelf, then the next. Offcuts stand before rolls, the
 * oldest cure date first, then the shortest. Every cut costs a kerf, the one at the very end of a piece only where something is cut off there.
 *
 * wanted: lengths above 0; kerfMm: width of what the blade takes, 0 or more. Method: branch and bound over the hoses, longest first,
 * begun from the plan by hand (`bestFitDecreasing`), within `budget` places tried.
 */
export function cutPlan(
  wanted: readonly WantedCut[],
  stock: readonly StockPiece[],
  kerfMm: number,
  budget = CUT_PLAN_BUDGET,
): CutPlan {
  const bench = new Bench(wanted, stock, kerfMm);
  const best = { placed: placeByHand(bench), tried: 0 };
  const placed: number[] = [];
  const proven = search(bench, [...bench.shelf.map(({ lengthMm }) => lengthMm)], placed, best, budget);
  return planOf(bench, best.placed, proven);
}

/** The plan that is made by hand: longest hose first, to an offcut that holds it if there is one, else a roll; of several to that with least left. */
export function bestFitDecreasing(wanted: readonly WantedCut[], stock: readonly StockPiece[], kerfMm: number): CutPlan {
  const bench = new Bench(wanted, stock, kerfMm);
  return planOf(bench, placeByHand(bench), false);
}

/** A hose that goes to no piece. */
const NOWHERE = -1;

class Bench {
  readonly hoses: readonly WantedCut[];
  readonly shelf: readonly StockPiece[];
  readonly kerfMm: number;
  /** mm of hose from the i-th on */
  readonly restMm: readonly number[];

  constructor(wanted: readonly WantedCut[], stock: readonly StockPiece[], kerfMm: number) {
    this.hoses = [...wanted].sort((p, q) => q.lengthMm - p.lengthMm || (p.run < q.run ? -1 : 1));
    this.shelf = [...stock].sort(inOrderOfTaking);
    this.kerfMm = kerfMm;
    const rest = [0];
    for (const { lengthMm } of [...this.hoses].reverse()) rest.unshift((rest[0] as number) + lengthMm);
    this.restMm = rest;
  }

  length(hose: number): number {
    return (this.hoses[hose] as WantedCut).lengthMm;
  }

  /** What is left of a room once a hose is cut from it; the kerf takes no more than there is. */
  after(roomMm: number, hose: number): number {
    return Math.max(0, roomMm - this.length(hose) - this.kerfMm);
  }
}

function inOrderOfTaking(p: StockPiece, q: StockPiece): number {
  if (p.offcut !== q.offcut && (p.offcut || q.offcut)) return p.offcut ? -1 : 1;
  const [older, newer] = [cureMonth(p.cureDate) ?? Infinity, cureMonth(q.cureDate) ?? Infinity];
  if (older !== newer) return older < newer ? -1 : 1;
  return p.lengthMm - q.lengthMm || (p.id < q.id ? -1 : 1);
}

function placeByHand(bench: Bench): number[] {
  const room = bench.shelf.map(({ lengthMm }) => lengthMm);
  return bench.hoses.map((_, hose) => {
    const holding = bench.shelf.map((_piece, i) => i).filter((i) => (room[i] as number) >= bench.length(hose));
    const offcuts = holding.filter((i) => bench.shelf[i]?.offcut === true);
    const [at] = (offcuts.length > 0 ? offcuts : holding).sort((p, q) => (room[p] as number) - (room[q] as number));
    if (at === undefined) return NOWHERE;
    room[at] = bench.after(room[at] as number, hose);
    return at;
  });
}

/** Goes on with the places of the first hoses; answers whether all was looked at. */
function search(
  bench: Bench,
  room: number[],
  placed: number[],
  best: { placed: number[]; tried: number },
  budget: number,
): boolean {
  const hose = placed.length;
  if (!isMore(mostOf(bench, room, placed), worthOf(bench, best.placed))) return true;
  if (hose === bench.hoses.length) {
    best.placed = [...placed];
    return true;
  }
  for (const piece of [...bench.shelf.keys(), NOWHERE]) {
    const had = room[piece];
    if (had !== undefined && had < bench.length(hose)) continue;
    best.tried += 1;
    if (best.tried > budget) return false;
    if (had !== undefined) room[piece] = bench.after(had, hose);
    placed.push(piece);
    const all = search(bench, room, placed, best, budget);
    placed.pop();
    if (had !== undefined) room[piece] = had;
    if (!all) return false;
  }
  return true;
}

/** What a plan is worth, the weightiest first: hoses, their length, that from offcuts, that from each piece. */
function worthOf(bench: Bench, placed: readonly number[]): number[] {
  const from = bench.shelf.map(() => 0);
  let hoses = 0;
  placed.forEach((piece, hose) => {
    if (piece === NOWHERE) return;
    hoses += 1;
    from[piece] = (from[piece] as number) + bench.length(hose);
  });
  return [hoses, sum(from), sum(from.filter((_, i) => bench.shelf[i]?.offcut === true)), ...from];
}

/** Number by number no less than any plan that begins so is worth. */
function mostOf(bench: Bench, room: readonly number[], placed: readonly number[]): number[] {
  const [hoses, length, fromOffcuts, ...from] = worthOf(bench, placed) as [number, number, number, ...number[]];
  const rest = bench.restMm[placed.length] as number;
  const offcutRoom = sum(room.filter((_, i) => bench.shelf[i]?.offcut === true));
  return [
    hoses + bench.hoses.length - placed.length,
    length + rest,
    fromOffcuts + Math.min(rest, offcutRoom),
    ...from.map((mm, i) => mm + Math.min(rest, room[i] as number)),
  ];
}

/** Less than this is no more of anything, mm: sums of the same lengths in another order. */
const SAME_MM = 1e-6;

function isMore(one: readonly number[], other: readonly number[]): boolean {
  const at = one.findIndex((mm, i) => Math.abs(mm - (other[i] as number)) > SAME_MM);
  return at >= 0 && (one[at] as number) > (other[at] as number);
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, n) => total + n, 0);
}

function planOf(bench: Bench, placed: readonly number[], proven: boolean): CutPlan {
  const cutFrom = (piece: number): number[] => placed.flatMap((at, hose) => (at === piece ? [hose] : []));
  return {
    pieces: bench.shelf.flatMap((piece, i) => {
      const hoses = cutFrom(i);
      if (hoses.length === 0) return [];
      const leftMm = hoses.reduce((room, hose) => bench.after(room, hose), piece.lengthMm);
      return [{ piece, cuts: hoses.map((hose) => bench.hoses[hose] as WantedCut), leftMm }];
    }),
    notHeld: cutFrom(NOWHERE).map((hose) => bench.hoses[hose] as WantedCut),
    proven,
  };
}
