import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { inchesToMm, psiToKpa } from '../../shared/base/units.ts';
import { PART_KINDS } from '../../shared/document/parts/columns.ts';
import { parsePartTables } from '../../shared/document/parts/parsePartTables.ts';
import type { Hose } from '../../shared/document/parts/schema.ts';

const MODELS = new URL('../../models/', import.meta.url);
const read = (path: string): string => readFileSync(new URL(path, MODELS), 'utf8');

function hosesOf(path: string): readonly Hose[] {
  const tables = parsePartTables([{ path, kind: 'hoses', text: read(path) }]);
  if (!tables.ok) throw new Error(JSON.stringify(tables.problems));
  return tables.value.hoses;
}

/**
 * FAA AC 43.13-1B (1998-09-08), chapter 9, table 9-3, upper half, p. 9-22: dash, hose ID in, hose OD in, recommended
 * operating psi, minimum bend radius in. Typed from the page.
 */
const TABLE_9_3: readonly (readonly [dash: number, id: number, od: number, psi: number, radius: number])[] = [
  [3, 1 / 8, 0.45, 3000, 3],
  [4, 3 / 16, 0.52, 3000, 3],
  [5, 1 / 4, 0.58, 3000, 3.38],
  [6, 5 / 16, 0.67, 2000, 4],
  [8, 13 / 32, 0.77, 2000, 4.63],
  [10, 1 / 2, 0.92, 1750, 5.5],
  [12, 5 / 8, 1.08, 1750, 6.5],
  [16, 7 / 8, 1.23, 800, 7.38],
  [20, 1 + 1 / 8, 1.5, 600, 9],
  [24, 1 + 3 / 8, 1.75, 500, 11],
  [32, 1 + 13 / 16, 2.22, 350, 13.25],
  [40, 2 + 3 / 8, 2.88, 200, 24],
  [48, 3, 3.56, 200, 33],
];

describe('the published table of MIL-H-8794 hose', () => {
  const hoses = hosesOf('parts/published/hoses-ac43-13-1b.csv');

  test.each(TABLE_9_3)('-%i: every cell is the printed figure', (dash, id, od, psi, radius) => {
    const hose = hoses.find((h) => h.dash === dash) as Hose;
    expect(hose.insideDiameterMm).toBeCloseTo(inchesToMm(id), 9);
    expect(hose.outsideDiameterMm).toBeCloseTo(inchesToMm(od), 9);
    expect(hose.minBendRadiusMm).toBeCloseTo(inchesToMm(radius), 9);
    expect(hose.maxPressureKpa).toBeCloseTo(psiToKpa(psi), 3);
    // -3..-12: -65..250 F; -16..-48: -40..275 F, printed with the table
    expect(hose.minTemperatureC).toBeCloseTo(dash <= 12 ? (-65 - 32) / 1.8 : -40, 2);
    expect(hose.maxTemperatureC).toBeCloseTo(dash <= 12 ? (250 - 32) / 1.8 : 135, 2);
  });

  test('holds the 13 sizes, each naming its source and what the source leaves open', () => {
    expect(hoses.map((h) => h.dash)).toEqual(TABLE_9_3.map(([dash]) => dash));
    for (const hose of hoses) {
      expect(hose.provenance).toBe('published');
      expect(hose.source).toContain('table 9-3');
      expect(hose.source).toContain('datum not stated');
    }
  });

  const stored = new URL('../../../shared/reference/published-values.json', import.meta.url);
  test.skipIf(!existsSync(stored))('agrees with the table of check values beside the checkout', () => {
    const { tables } = JSON.parse(readFileSync(stored, 'utf8')) as {
      tables: { id: string; rows: { tag: string; cells: (string | number)[] }[] }[];
    };
    const rows = tables.find((t) => t.id === '1.1')?.rows.filter((r) => r.tag === 'SEEN') ?? [];
    expect(rows.length).toBe(TABLE_9_3.length);
    rows.forEach((row, i) => {
      const [dash, , id, , od, , psi, , , , radius] = row.cells;
      expect([-Number(dash), inches(id), inches(od), Number(psi), inches(radius)]).toEqual([...TABLE_9_3[i]!]);
    });
  });
});

/** "1 13/16" and 0.45 alike. */
function inches(text: string | number | undefined): number {
  return String(text)
    .split(' ')
    .map((word) => {
      const [over, under = '1'] = word.split('/');
      return Number(over) / Number(under);
    })
    .reduce((a, b) => a + b);
}

describe('the example tables', () => {
  const kinds = PART_KINDS;

  test('read without a problem, every row plainly an example', () => {
    const files = kinds.map((kind) => ({ path: kind, kind, text: read(`parts/${kind}.example.csv`) }));
    const tables = parsePartTables(files);
    expect(tables.ok ? [] : tables.problems).toEqual([]);
    if (!tables.ok) return;
    for (const row of kinds.flatMap((kind): readonly { provenance: string; source: string }[] => tables.value[kind])) {
      expect(row.provenance).toBe('example');
      expect(row.source).toContain('invented for the example');
    }
  });

  test.each(kinds)('%s: the bay holds the same file', (kind) => {
    expect(read(`bays/hillclimb/parts/${kind}.example.csv`)).toBe(read(`parts/${kind}.example.csv`));
  });

  test('some cushioned clamp holds every hose, a roll is of a hose that is there, an adapter grows with its size', () => {
    const files = kinds.map((kind) => ({ path: kind, kind, text: read(`parts/${kind}.example.csv`) }));
    const tables = parsePartTables(files);
    if (!tables.ok) throw new Error(JSON.stringify(tables.problems));
    const { hoses, clamps, rolls, adapters } = tables.value;
    const cushioned = clamps.filter(({ id }) => id.startsWith('cushion'));
    for (const { outsideDiameterMm: d } of hoses)
      expect([d, cushioned.some((c) => c.holdsFromMm <= d && d <= c.holdsToMm)]).toEqual([d, true]);
    for (const roll of rolls) expect(hoses.map(({ id }) => id)).toContain(roll.hose);
    const length = (a: (typeof adapters)[number]): number => a.portToBendMm + a.bendToSeatMm;
    for (const a of adapters)
      for (const b of adapters.filter(
        (o) => o.form === a.form && o.bendAngleDeg === a.bendAngleDeg && o.dash > a.dash,
      )) {
        expect(length(b)).toBeGreaterThan(length(a));
        expect(b.diameterMm).toBeGreaterThan(a.diameterMm);
      }
  });

  test('a bent end grows with its size and its angle, and a hose bends no tighter as it grows', () => {
    const hoses = hosesOf('parts/hoses.example.csv');
    for (const hose of hoses) {
      const larger = hoses.filter((h) => h.construction === hose.construction && h.dash > hose.dash);
      for (const other of larger) {
        expect(other.minBendRadiusMm).toBeGreaterThan(hose.minBendRadiusMm);
        expect(other.outsideDiameterMm).toBeGreaterThan(hose.outsideDiameterMm);
      }
    }
    const text = read('parts/ends.example.csv');
    const tables = parsePartTables([{ path: 'ends', kind: 'ends', text }]);
    const ends = tables.ok ? tables.value.ends : [];
    expect(ends.length).toBe(52);
    for (const a of ends) {
      for (const b of ends.filter(
        (e) => e.material === a.material && e.dash >= a.dash && e.bendAngleDeg >= a.bendAngleDeg,
      )) {
        expect(b.seatToBendMm).toBeGreaterThanOrEqual(a.seatToBendMm);
        expect(b.bendToShoulderMm).toBeGreaterThanOrEqual(a.bendToShoulderMm);
      }
    }
  });
});
