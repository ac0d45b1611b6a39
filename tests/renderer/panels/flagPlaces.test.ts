import { expect, it } from 'vitest';
import { FLAG, type FlagPlace, flagPlaces } from '../../../renderer/panels/straightView/flagPlaces.ts';
import { seededRandom } from '../../../shared/base/random.ts';

const ENDS = { a: 200, b: 800 };
const FORWARDS: FlagPlace = { back: false, row: 0 };

it('hangs flags forwards on the upper row where there is room, and back before END B', () => {
  expect(flagPlaces([300, 500], ENDS)).toEqual([FORWARDS, FORWARDS]);
  expect(flagPlaces([795], ENDS)).toEqual([{ back: true, row: 0 }]);
});

it('gives four flags at one place four places', () => {
  const places = flagPlaces([400, 400, 400, 400], ENDS);
  expect(new Set(places.map(({ back, row }) => `${back} ${row}`)).size).toBe(4);
});

it('never lets a flag off the hose, and hides none as long as there are no more than two to a flag’s width', () => {
  const random = seededRandom(7);
  for (let round = 0; round < 200; round++) {
    // Places at least half a flag apart: two rows always hold them.
    let x = ENDS.a + FLAG.widePx + random() * 5;
    const xs: number[] = [];
    while (x < ENDS.b - FLAG.widePx) {
      xs.push(x);
      x += FLAG.widePx / 2 + random() * 30;
    }
    const spans = flagPlaces(xs, ENDS).map(({ back, row }, i) => {
      const at = xs[i] as number;
      return { row, from: back ? at - FLAG.widePx : at, to: back ? at : at + FLAG.widePx };
    });
    for (const [i, p] of spans.entries()) {
      expect(p.from).toBeGreaterThanOrEqual(ENDS.a);
      expect(p.to).toBeLessThanOrEqual(ENDS.b);
      for (const q of spans.slice(i + 1)) if (p.row === q.row) expect(p.to <= q.from || q.to <= p.from).toBe(true);
    }
  }
});
