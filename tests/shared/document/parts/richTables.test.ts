import { describe, expect, it, test } from 'vitest';
import { describeProblem } from '../../../../shared/base/result.ts';
import { columnsOf, type PartKind } from '../../../../shared/document/parts/columns.ts';
import { completeEnd } from '../../../../shared/document/parts/completeEnd.ts';
import { cutOffMm, dropMm } from '../../../../shared/document/parts/cutOff.ts';
import { parsePartTables, readPartSheets } from '../../../../shared/document/parts/parsePartTables.ts';
import { cellText, partTableCsv } from '../../../../shared/document/parts/partTableCsv.ts';
import type { Adapter, Clamp, EndRow, Roll } from '../../../../shared/document/parts/schema.ts';
import { sampleEnd, sampleHose } from '../../../arbitraries/projects.ts';

const OWN = { provenance: 'own', source: 'caliper, on the bench' } as const;

const TEE: Adapter = {
  id: 'tee-8',
  name: 'Tee',
  form: 'tee',
  portSeat: 'orb-8',
  portDash: 8,
  seat: 'flare-37',
  dash: 8,
  bendAngleDeg: 0,
  portToBendMm: 22,
  bendToSeatMm: 20,
  branchSeat: 'flare-37',
  branchDash: 8,
  branchToSeatMm: 21,
  turning: 'settable',
  diameterMm: 26,
  material: 'steel',
  ...OWN,
};
const CLAMP: Clamp = {
  id: 'c-16',
  name: 'Clamp 16',
  holdsFromMm: 15,
  holdsToMm: 17,
  standOffMm: 14,
  widthMm: 15,
  material: 'steel, with silicone cushion',
  maxTemperatureC: 200,
  ...OWN,
};
const ROLL: Roll = { id: 'roll-1', hose: 'hose-8', lengthMm: 2400, cureDate: '2Q26', place: 'shelf 2', ...OWN };

/** A table of one row, given by its headings. */
function tableOf(row: Readonly<Record<string, string>>): string {
  const cells = Object.values(row).map((cell) => `"${cell}"`);
  return `${Object.keys(row).join(',')}\n${cells.join(',')}\n`;
}

function problemsIn(kind: PartKind, row: Readonly<Record<string, string>>): string[] {
  const read = parsePartTables([{ path: 'own.csv', kind, text: tableOf(row) }]);
  return read.ok ? [] : read.problems.map(describeProblem);
}

/** The cells of a part as its file has them, by heading. */
function cellsOf(kind: PartKind, row: object): Record<string, string> {
  const values = new Map(Object.entries(row));
  const cells = columnsOf(kind).map(({ key, heading }) => [heading, cellText(values.get(key))] as const);
  return Object.fromEntries(cells.filter(([, text]) => text !== ''));
}

describe('an end by C and drop', () => {
  const { seatToBendMm: _s, bendToShoulderMm: _b, ...bare } = sampleEnd();
  const row = (changes: Partial<EndRow>): EndRow => ({ ...bare, ...changes });

  // Right triangles on paper: seatToBend = drop / sin b, bendToShoulder = C - seatToBend cos b.
  test.each([
    [45, 40, 20, 20 * Math.SQRT2, 20],
    [90, 33, 28, 28, 33],
    [30, 50, 15, 30, 50 - 15 * Math.sqrt(3)],
    [60, 25, 10 * Math.sqrt(3), 20, 15],
    [120, 5, 15 * Math.sqrt(3), 30, 20],
    [150, -10, 20, 40, -10 + 20 * Math.sqrt(3)],
  ])('%d degrees, C %d mm, drop %d mm', (bendAngleDeg, cutOff, drop, toBend, toShoulder) => {
    const end = completeEnd(row({ bendAngleDeg, cutOffMm: cutOff, dropMm: drop }));
    expect(end?.seatToBendMm).toBeCloseTo(toBend, 9);
    expect(end?.bendToShoulderMm).toBeCloseTo(toShoulder, 9);
    expect(end === undefined ? undefined : [cutOffMm(end), dropMm(end)].map((n) => Number(n.toFixed(9)))).toEqual([
      Number(cutOff.toFixed(9)),
      Number(drop.toFixed(9)),
    ]);
  });

  it('takes a straight one from C alone', () => {
    expect(completeEnd(row({ bendAngleDeg: 0, cutOffMm: 24.5 }))).toMatchObject({
      seatToBendMm: 0,
      bendToShoulderMm: 24.5,
    });
  });

  it('makes up nothing: no drop for a bent one, nothing for a half turn', () => {
    expect(completeEnd(row({ bendAngleDeg: 45, cutOffMm: 40 }))).toBeUndefined();
    expect(completeEnd(row({ bendAngleDeg: 45, dropMm: 20 }))).toBeUndefined();
    expect(completeEnd(row({ bendAngleDeg: 180, cutOffMm: 40, dropMm: 50 }))).toBeUndefined();
    expect(completeEnd(row({ bendAngleDeg: 0 }))).toBeUndefined();
  });

  it('lets lengths that are there stand, whatever C says', () => {
    const end = completeEnd(row({ bendAngleDeg: 90, seatToBendMm: 30, bendToShoulderMm: 20, cutOffMm: 20.4 }));
    expect(end).toMatchObject({ seatToBendMm: 30, bendToShoulderMm: 20, cutOffMm: 20.4 });
  });

  it('is read from a file, its file keeps what it gave', () => {
    const given = row({ bendAngleDeg: 45, cutOffMm: 40, dropMm: 20 });
    const file = { path: 'e.csv', kind: 'ends', text: partTableCsv('ends', [given]) } as const;
    const tables = parsePartTables([file]);
    expect(tables.ok && tables.value.ends[0]?.seatToBendMm).toBeCloseTo(20 * Math.SQRT2, 9);
    expect(readPartSheets([file])).toEqual({ ok: true, value: [{ path: 'e.csv', kind: 'ends', rows: [given] }] });
    expect(file.text).not.toContain('seat_to_bend_mm');
  });

  it('says which of the two lengths or readings are missing', () => {
    const cells = cellsOf('ends', row({ bendAngleDeg: 45, cutOffMm: 40 }));
    expect(problemsIn('ends', cells)).toEqual([
      'own.csv row 2, seat_to_bend_mm: expected seat_to_bend_mm and bend_to_shoulder_mm, or cut_off_mm and drop_mm',
    ]);
    const straight = cellsOf('ends', row({ bendAngleDeg: 0 }));
    expect(problemsIn('ends', straight)).toEqual([
      'own.csv row 2, seat_to_bend_mm: expected seat_to_bend_mm and bend_to_shoulder_mm, or cut_off_mm',
    ]);
  });
});

describe('an end whose figures disagree', () => {
  const cells = (changes: Partial<EndRow>): Record<string, string> =>
    cellsOf('ends', { ...sampleEnd({ bendAngleDeg: 45, seatToBendMm: 28.28, bendToShoulderMm: 20 }), ...changes });

  it('takes C and drop within a millimetre of what the lengths give', () => {
    expect(problemsIn('ends', cells({ cutOffMm: 40.9, dropMm: 19.1 }))).toEqual([]);
  });

  it('tells C and drop that are further off, both, with what follows', () => {
    expect(problemsIn('ends', cells({ cutOffMm: 41.1, dropMm: 18.9 }))).toEqual([
      'own.csv row 2, cut_off_mm: does not agree with the lengths and the angle, from which 40.0 follows: measure again, got 41.1',
      'own.csv row 2, drop_mm: does not agree with the lengths and the angle, from which 20.0 follows: measure again, got 18.9',
    ]);
  });

  it('of 180 degrees: asks the drop, axis to axis, and checks C against the two lengths', () => {
    const half = { bendAngleDeg: 180, seatToBendMm: 30, bendToShoulderMm: 50 };
    expect(problemsIn('ends', cells(half))).toEqual([
      'own.csv row 2, drop_mm: an end bent 180 degrees needs its drop_mm, from axis to axis, got 0',
    ]);
    expect(problemsIn('ends', cells({ ...half, dropMm: 44, cutOffMm: 20 }))).toEqual([]);
    expect(problemsIn('ends', cells({ ...half, dropMm: 44, cutOffMm: 23 }))).toEqual([
      'own.csv row 2, cut_off_mm: does not agree with the lengths and the angle, from which 20.0 follows: measure again, got 23',
    ]);
  });

  it('of 180 degrees may have the shoulder behind where the bend ends', () => {
    expect(
      problemsIn('ends', cells({ bendAngleDeg: 180, seatToBendMm: 30, bendToShoulderMm: -4, dropMm: 44 })),
    ).toEqual([]);
  });

  it('in a range: needs both ends of it, rising, at most one turn', () => {
    expect(problemsIn('ends', cells({ turning: 'range' }))).toEqual([
      'own.csv row 2, turn_from_deg: an end that turns in a range needs turn_from_deg and turn_to_deg',
    ]);
    expect(problemsIn('ends', cells({ turning: 'range', turnFromDeg: -40, turnToDeg: 55 }))).toEqual([]);
    for (const turnToDeg of [-41, 321])
      expect(problemsIn('ends', cells({ turning: 'range', turnFromDeg: -40, turnToDeg }))).toEqual([
        `own.csv row 2, turn_to_deg: expected from turn_from_deg, -40, to one turn above, got ${turnToDeg}`,
      ]);
  });

  it('crimped: the least finished diameter is not above the greatest', () => {
    expect(problemsIn('ends', cells({ crimpFromMm: 21.2, crimpToMm: 21.4 }))).toEqual([]);
    expect(problemsIn('ends', cells({ crimpFromMm: 21.5, crimpToMm: 21.4 }))).toEqual([
      'own.csv row 2, crimp_to_mm: expected at least crimp_from_mm, 21.5, got 21.4',
    ]);
  });
});

describe('pairs and words in cells', () => {
  const cells = (changes: Record<string, string>): Record<string, string> => ({
    ...cellsOf('hoses', sampleHose({ pressureByTemperature: [[20, 17000]], listedFluids: ['petrol'] })),
    ...changes,
  });

  it('reads pressures by temperature and fluids, however the words stand apart', () => {
    const text = tableOf(
      cells({ pressure_by_temperature: '-40:20000  20:17000\t150.5:13600', listed_fluids: ' engine-oil   e85 ' }),
    );
    const read = parsePartTables([{ path: 'h.csv', kind: 'hoses', text }]);
    expect(read.ok ? read.value.hoses[0]?.pressureByTemperature : read).toEqual([
      [-40, 20000],
      [20, 17000],
      [150.5, 13600],
    ]);
    expect(read.ok && read.value.hoses[0]?.listedFluids).toEqual(['engine-oil', 'e85']);
  });

  test.each(['20', '20:', ':17000', '20:17000:3', '20=17000', '20:17 MPa', '20:17000, 150:13600'])(
    'refuses the pairs %j',
    (pressure_by_temperature) => {
      expect(problemsIn('hoses', cells({ pressure_by_temperature }))).toEqual([
        `own.csv row 2, pressure_by_temperature: expected pairs of numbers with a colon between, such as 20:17000 150:13600, got ${JSON.stringify(pressure_by_temperature)}`,
      ]);
    },
  );

  it('refuses temperatures that do not rise, a pressure of nothing, a vacuum above none, a fluid it does not know', () => {
    expect(problemsIn('hoses', cells({ pressure_by_temperature: '150:13600 20:17000' }))).toEqual([
      'own.csv row 2, pressure_by_temperature: expected temperatures that rise from pair to pair, got 20',
    ]);
    const all = problemsIn(
      'hoses',
      cells({ pressure_by_temperature: '20:0', vacuum_limit_kpa: '85', listed_fluids: 'petrol brake-fluid' }),
    );
    expect(all).toHaveLength(3);
    expect(all[0]).toMatch(/^own\.csv row 2, pressure_by_temperature\[0\]\[1\]: expected a number above 0, got 0$/);
    expect(all[1]).toMatch(/^own\.csv row 2, vacuum_limit_kpa: expected 0 or less, got 85$/);
    expect(all[2]).toMatch(/^own\.csv row 2, listed_fluids\[1\]: expected one of "engine-oil", .*, got "brake-fluid"$/);
  });
});

describe('adapters, clamps and rolls', () => {
  it('are read back as they are written', () => {
    const files = [
      { path: 'a.csv', kind: 'adapters', text: partTableCsv('adapters', [TEE]) },
      { path: 'c.csv', kind: 'clamps', text: partTableCsv('clamps', [CLAMP]) },
      { path: 'r.csv', kind: 'rolls', text: partTableCsv('rolls', [ROLL]) },
    ] as const;
    const read = parsePartTables(files);
    expect(read).toMatchObject({ ok: true, value: { adapters: [TEE], clamps: [CLAMP], rolls: [ROLL] } });
  });

  it('a tee needs the length of its branch, an adapter some length', () => {
    const { branchToSeatMm: _none, ...short } = TEE;
    expect(problemsIn('adapters', cellsOf('adapters', short))).toEqual([
      'own.csv row 2, branch_to_seat_mm: a tee needs branch_to_seat_mm',
    ]);
    expect(problemsIn('adapters', cellsOf('adapters', { ...TEE, portToBendMm: 0, bendToSeatMm: 0 }))).toEqual([
      'own.csv row 2, bend_to_seat_mm: port_to_bend_mm and bend_to_seat_mm are both 0: measure the adapter, got 0',
    ]);
  });

  it('a clamp holds up to more than it holds from', () => {
    expect(problemsIn('clamps', cellsOf('clamps', { ...CLAMP, holdsToMm: 14 }))).toEqual([
      'own.csv row 2, holds_to_mm: expected at least holds_from_mm, 15, got 14',
    ]);
  });

  test.each(['2Q26', '4Q2026', '2026-05', '2026-05-31'])('a roll cured %s', (cureDate) => {
    expect(problemsIn('rolls', cellsOf('rolls', { ...ROLL, cureDate }))).toEqual([]);
  });
  test.each(['5Q26', 'May 2026', '2026/05'])('not a roll cured %s', (cureDate) => {
    expect(problemsIn('rolls', cellsOf('rolls', { ...ROLL, cureDate }))).toEqual([
      `own.csv row 2, cure_date: expected a quarter such as 2Q26 or a date such as 2026-05, got "${cureDate}"`,
    ]);
  });

  it('all problems of all files are told at once, each with its file, row and column', () => {
    const files = (['adapters', 'clamps', 'rolls'] as const).map((kind) => ({
      path: `${kind}.csv`,
      kind,
      text: {
        adapters: `${partTableCsv('adapters', [TEE, { ...TEE, id: 'Tee 2', dash: 8.5 }])}`,
        clamps: partTableCsv('clamps', [CLAMP, { ...CLAMP, id: 'c-2', holdsToMm: 1 }, { ...CLAMP, widthMm: -1 }]),
        rolls: partTableCsv('rolls', [{ ...ROLL, lengthMm: 0 }]),
      }[kind],
    }));
    const read = parsePartTables(files);
    expect(read.ok ? [] : read.problems.map(describeProblem)).toEqual([
      'adapters.csv row 3, id: expected lower-case letters, digits and hyphens, got "Tee 2"',
      'adapters.csv row 3, dash: expected a whole number, got 8.5',
      'clamps.csv row 3, holds_to_mm: expected at least holds_from_mm, 15, got 1',
      'clamps.csv row 4, width_mm: expected a number above 0, got -1',
      'rolls.csv row 2, length_mm: expected a number above 0, got 0',
    ]);
  });

  it('an id may stand in two kinds, not twice in one', () => {
    const again = [
      { path: 'a.csv', kind: 'adapters', text: partTableCsv('adapters', [{ ...TEE, id: 'same' }]) },
      { path: 'c.csv', kind: 'clamps', text: partTableCsv('clamps', [{ ...CLAMP, id: 'same' }]) },
    ] as const;
    expect(parsePartTables(again).ok).toBe(true);
    const twice = parsePartTables([again[0], { ...again[0], path: 'b.csv' }]);
    expect(twice.ok ? [] : twice.problems.map(describeProblem)).toEqual([
      'b.csv row 2, id: the id is taken by a.csv row 2, got "same"',
    ]);
  });
});

it('knows the words of a column and what it means', () => {
  const column = (kind: PartKind, key: string) => columnsOf(kind).find((c) => c.key === key);
  expect(column('ends', 'turning')).toMatchObject({ cell: 'text', choices: ['swivel', 'range', 'fixed'] });
  expect(column('hoses', 'listedFluids')).toMatchObject({ cell: 'words', optional: true });
  expect(column('hoses', 'listedFluids')?.choices).toContain('engine-oil');
  expect(column('clamps', 'standOffMm')?.meaning).toMatch(/to the axis of what it holds/);
});
