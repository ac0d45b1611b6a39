import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { cureMonth } from '../../../../shared/document/stock/cureMonth.ts';
import {
  bestFitDecreasing,
  type CutPlan,
  cutPlan,
  type StockPiece,
} from '../../../../shared/document/stock/cutPlan.ts';

const wanted = (lengths: readonly number[]) => lengths.map((lengthMm, i) => ({ run: `h-${i + 1}`, lengthMm }));
const told = ({ pieces }: CutPlan) =>
  pieces.map(({ piece, cuts, leftMm }) => [piece.id, cuts.map(({ lengthMm }) => lengthMm), leftMm]);

/** Seven hoses of a small workshop, with the kerf of a thin wheel. */
const SEVEN = wanted([812, 655, 640, 530, 488, 460, 372]);
const SHELF: StockPiece[] = [
  { id: 'roll', lengthMm: 3000 },
  { id: 'offcut', lengthMm: 1500, offcut: true },
];

describe('which hose is cut from which piece', () => {
  test('by hand: 812 + 655 + 2 x 3 = 1473 of the offcut, 27 left; 2490 + 5 x 3 = 2505 of the roll, 495 left', () => {
    expect(told(bestFitDecreasing(SEVEN, SHELF, 3))).toEqual([
      ['offcut', [812, 655], 27],
      ['roll', [640, 530, 488, 460, 372], 495],
    ]);
  });

  test('looked through it is better: 655 + 460 + 372 + 3 x 3 = 1496 of the offcut, 4 left, and 518 on the roll', () => {
    const plan = cutPlan(SEVEN, SHELF, 3);
    expect(plan.proven).toBe(true);
    expect(told(plan)).toEqual([
      ['offcut', [655, 460, 372], 4],
      ['roll', [812, 640, 530, 488], 518],
    ]);
  });

  test('a hose that ends where the piece ends needs no last cut; a kerf more between two and they no longer fit', () => {
    expect(told(cutPlan(wanted([500, 497]), [{ id: 'p', lengthMm: 1000 }], 3))).toEqual([['p', [500, 497], 0]]);
    const wider = cutPlan(wanted([500, 497]), [{ id: 'p', lengthMm: 1000 }], 3.1);
    expect(wider.notHeld.map(({ lengthMm }) => lengthMm)).toEqual([497]);
  });

  test('the oldest first, whole quarters before later months; hose of unknown age last', () => {
    const shelf: StockPiece[] = [
      { id: 'unknown', lengthMm: 1000 },
      { id: 'new', lengthMm: 1000, cureDate: '2026-05' },
      { id: 'old', lengthMm: 2000, cureDate: '2Q26' },
    ];
    expect(told(cutPlan(wanted([900]), shelf, 3)).map(([id]) => id)).toEqual(['old']);
    expect(cureMonth('2Q26')).toBe(cureMonth('2Q2026'));
    expect(cureMonth('4Q25')).toBeLessThan(cureMonth('2026-01') as number);
    expect(cureMonth('2026-05-12')).toBeLessThan(cureMonth('2026-06') as number);
    expect(cureMonth(undefined)).toBeUndefined();
  });

  test('what no piece holds is told, and the others are cut all the same', () => {
    const plan = cutPlan(wanted([3200, 400]), SHELF, 3);
    expect(plan.notHeld).toEqual([{ run: 'h-1', lengthMm: 3200 }]);
    expect(told(plan)).toEqual([['offcut', [400], 1097]]);
    expect(cutPlan(wanted([400]), [], 3).notHeld).toHaveLength(1);
  });

  test('past its budget it says that it is not proven, and is no worse than by hand', () => {
    const plan = cutPlan(SEVEN, SHELF, 3, 3);
    expect(plan.proven).toBe(false);
    expect(plan.notHeld).toEqual([]);
  });

  test('against every way there is, small seeded shelves: nothing cut twice, nothing lost, no way better', () => {
    const random = seededRandom(41);
    const between = (least: number, most: number) => least + Math.floor(random() * (most - least + 1));
    for (let round = 0; round < 60; round += 1) {
      const shelf = Array.from({ length: between(1, 3) }, (_, i) => ({
        id: `p-${i}`,
        lengthMm: between(300, 1500),
        offcut: random() < 0.5,
      }));
      const hoses = wanted(Array.from({ length: between(1, 5) }, () => between(100, 700)));
      const kerfMm = between(0, 4);
      const plan = cutPlan(hoses, shelf, kerfMm);
      const runs = [...plan.pieces.flatMap(({ cuts }) => cuts), ...plan.notHeld].map(({ run }) => run).sort();
      expect(runs).toEqual(hoses.map(({ run }) => run).sort());
      for (const { piece, cuts } of plan.pieces) expect(needed(cuts, kerfMm)).toBeLessThanOrEqual(piece.lengthMm);
      expect(plan.proven).toBe(true);
      const [count, length, fromOffcuts] = everyWay(hoses, shelf, kerfMm);
      const cut = plan.pieces.flatMap(({ cuts }) => cuts);
      expect(cut).toHaveLength(count);
      expect(total(cut)).toBe(length);
      expect(total(plan.pieces.flatMap(({ piece, cuts }) => (piece.offcut ? cuts : [])))).toBe(fromOffcuts);
    }
  });
});

type Hoses = ReturnType<typeof wanted>;
const total = (cuts: readonly { readonly lengthMm: number }[]) => cuts.reduce((mm, { lengthMm }) => mm + lengthMm, 0);
const needed = (cuts: readonly { readonly lengthMm: number }[], kerfMm: number) =>
  total(cuts) + kerfMm * Math.max(0, cuts.length - 1);

/** The slow twin: each hose to each piece or to none, all of it. */
function everyWay(hoses: Hoses, shelf: readonly StockPiece[], kerfMm: number): [number, number, number] {
  let best: [number, number, number] = [0, 0, 0];
  const ways = (shelf.length + 1) ** hoses.length;
  for (let way = 0; way < ways; way += 1) {
    const at = hoses.map((_, i) => Math.floor(way / (shelf.length + 1) ** i) % (shelf.length + 1));
    const from = shelf.map((_, p) => hoses.filter((_hose, i) => at[i] === p));
    if (!from.every((cuts, p) => needed(cuts, kerfMm) <= (shelf[p] as StockPiece).lengthMm)) continue;
    const cut = from.flat();
    const offcuts = from.filter((_, p) => shelf[p]?.offcut === true).flat();
    const worth: [number, number, number] = [cut.length, total(cut), total(offcuts)];
    const differs = worth.findIndex((n, i) => n !== best[i]);
    if (differs >= 0 && (worth[differs] as number) > (best[differs] as number)) best = worth;
  }
  return best;
}
