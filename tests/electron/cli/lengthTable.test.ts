import { expect, test } from 'vitest';
import { lengthTable } from '../../../electron/cli/lengthTable.ts';
import { lengthsOf } from '../../../shared/document/lay/lengthsOf.ts';
import { COOLER_LAY, DRAIN_LAY, DRAIN_RUN, ELBOW_8 } from '../../arbitraries/reports.ts';

test('each length by its names, with what the ends add, where it is measured, and which figure lacks', () => {
  const cooler = { ...COOLER_LAY, lengths: lengthsOf({ cutLengthMm: 420.159, a: ELBOW_8, b: ELBOW_8 }) };
  const { a, b } = DRAIN_RUN;
  const drain = {
    ...DRAIN_LAY,
    lengths: lengthsOf({ cutLengthMm: DRAIN_LAY.cutLengthMm, a: a.end, b: b.end }),
    sleeve: { cutLengthMm: 260.01, stiffMm: 270.2, reachMm: 3.175, turnedDeg: 91.4, allowanceMm: 4.2 },
  };
  const text = lengthTable([cooler, drain]).join('\n');
  expect(text).toMatch(/^cooler-feed +cut, shoulder to shoulder +420\.2 +16 9\/16 in +0\.0 +0\.0 /m);
  expect(text).toMatch(/ live, mouth to mouth +376\.2 +14 13\/16 in +-22\.0 +-22\.0 /);
  expect(text).toMatch(
    / overall, seat to seat = centreline to centreline +514\.2 +20 1\/4 in +47\.0 +47\.0 +the seat centreline of END A to the seat centreline of END B$/m,
  );
  expect(text).toMatch(/ end of nut +not known: the table of ends lacks how far the nut of END A reaches/);
  expect(text).toMatch(/ sleeve, at least +260\.1 +10 1\/4 in +estimate, with 91 degrees of bends; 270\.2 mm/);
});

test('nothing where no run lies, nor in a report that has no lengths by name', () => {
  expect(lengthTable([{ ...COOLER_LAY, outcome: 'no-way' }])).toEqual([]);
  expect(lengthTable([COOLER_LAY])).toEqual([]);
});
