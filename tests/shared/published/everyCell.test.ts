import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { inchesToMm, KPA_PER_PSI } from '../../../shared/base/units.ts';
import { BALL_INCH, BALL_SOURCE } from '../../../shared/document/assembly/ballTest.ts';
import { JOINT_GAPS } from '../../../shared/document/assembly/jointGap.ts';
import { fluidCoreCell } from '../../../shared/document/materials/fluidCore.ts';
import { GALVANIC_SOURCE, galvanicPair } from '../../../shared/document/materials/galvanic.ts';
import { FLUIDS } from '../../../shared/document/parts/fluids.ts';
import { FLUID_DENSITY } from '../../../shared/document/parts/hoseWeight.ts';
import { CORES, type EndMaterial } from '../../../shared/document/parts/schema.ts';
import { RULES, ruleById } from '../../../shared/document/rules/index.ts';
import { en853Tolerance, lengthTolerance } from '../../../shared/document/rules/lengthTolerance.ts';
import { CLAMP_TORQUE_SOURCE, CLAMP_TORQUES } from '../../../shared/document/torque/clampTorque.ts';
import { FLATS, TORQUE_TABLES } from '../../../shared/document/torque/torqueTables.ts';
import { ANTI_STATIC_OHM } from '../../../shared/solve/checks/staticCharge.ts';
import { squareBendLoss } from '../../../shared/solve/flow/bendLoss.ts';
import { corrugatedFactor } from '../../../shared/solve/flow/corrugatedLoss.ts';
import { colebrook } from '../../../shared/solve/flow/darcyFactor.ts';
import { fluidState, SAE_J300 } from '../../../shared/solve/flow/fluidState.ts';
import { boreRoughness } from '../../../shared/solve/flow/lineLoss.ts';
import { COVER_EMISSIVITY, HOT_SKIN_EMISSIVITY, HOT_SKIN_SOURCE } from '../../../shared/solve/heat/materials.ts';
import { CODE, OF_THE_PART, TRADE } from './tradeFigures.ts';

/** A figure as it is printed in the collected tables, and the document it was read in. */
interface Cell {
  readonly row: number;
  readonly column: number;
  readonly what: string;
  readonly printed: string | number;
  readonly read: 'seen' | 'memory' | 'computed';
  readonly document?: string;
}
interface FixtureTable {
  readonly id: string;
  readonly document?: string;
  readonly cells: readonly Cell[];
}
interface Fixture {
  readonly rowsOfTables: Readonly<Record<string, number>>;
  readonly tables: readonly FixtureTable[];
}
const FIXTURE = JSON.parse(readFileSync('tests/fixtures/published/cells.json', 'utf8')) as Fixture;

/** What the product has for a cell: its numbers in the unit of print, and the source it names; none = it names it elsewhere. */
interface Shipped {
  readonly numbers: readonly number[];
  readonly source?: string;
  /** one step of what is printed, where print rounds */
  readonly step?: number;
}

const mmToIn = (mm: number): number => mm / 25.4;
const torque = (id: string) => TORQUE_TABLES.find((table) => table.id === id);
const ofTorque =
  (id: string) =>
  ({ what }: Cell): Shipped => ({
    numbers: torque(id)?.byDash[-Number(what)] ?? [],
    source: torque(id)?.source ?? '',
  });
const navy = (cell: Cell): Shipped => {
  const table = torque(cell.column <= 2 ? 'navy-steel' : 'navy-aluminium');
  const [least = Number.NaN, most = Number.NaN] = table?.byDash[-Number(cell.what)] ?? [];
  return { numbers: [cell.column === 1 || cell.column === 4 ? least : most], source: table?.source ?? '' };
};

/** The rules whose figures are asked for below. */
const compared = new Set<string>();

/** A rule's value in the unit of print. */
const rule = (id: string, factor = 1): Shipped => {
  compared.add(id);
  const found = ruleById(id);
  return { numbers: [(found?.value ?? Number.NaN) * factor], source: found?.source ?? '' };
};
/** A rule's range in the unit of print. */
const range = (id: string, factor = 1): Shipped => {
  compared.add(id);
  const { low = Number.NaN, high = Number.NaN } = ruleById(id)?.range ?? {};
  return { numbers: [low * factor, high * factor], source: ruleById(id)?.source ?? '' };
};

/** Roughness relative to the bore, by column from the second. */
const ROUGHNESS = [0, 1e-5, 1e-4, 5e-4, 1e-3, 5e-3, 1e-2, 5e-2];
/** Lengths within each row of Table 4-8, in; assembly lengths within each row of EN 853 Table 3, mm. */
const WITHIN_INCH = [12, 24, 36, 48, 72, 100];
const WITHIN_MM = [630, 1250, 2500, 8000, 9000];

const lengthRow = ({ row }: Cell): Shipped => {
  const cutMm = inchesToMm(WITHIN_INCH[row] as number);
  const { toleranceMm, source } = lengthTolerance(cutMm, 'nbr');
  return { numbers: [row === 5 ? (toleranceMm / cutMm) * 100 : mmToIn(toleranceMm)], source, step: 0.001 };
};
const en853Row = ({ row, column }: Cell): Shipped => {
  const mm = WITHIN_MM[row] as number;
  const { overMm, underMm, source } = en853Tolerance(mm, [16, 32, 64][column - 1] as number);
  const unit = row >= 3 ? 100 / mm : 1;
  return { numbers: [overMm * unit, -underMm * unit], source };
};
const clampRow = (cell: Cell): Shipped => ({
  numbers: CLAMP_TORQUES.flatMap((clamp) => (cell.what === 'again' ? clamp.again : clamp.newHose)),
  source: CLAMP_TORQUE_SOURCE,
});
const METALS: readonly EndMaterial[] = ['aluminium', 'steel', 'stainless', 'brass'];
/** A metal's potential as the pairs with brass have it. */
const galvanicRow = ({ what }: Cell): Shipped => ({
  numbers: [-450 - galvanicPair(what as EndMaterial, 'brass').apartMv],
  source: GALVANIC_SOURCE,
});
const roughnessRow = ({ what }: Cell): Shipped => {
  const { low, likely, high, basis } = boreRoughness(what.startsWith('ptfe') ? 'ptfe-smooth' : 'nbr');
  return { numbers: what === 'ptfe' ? [likely] : what === 'ptfe-high' ? [high] : [low, high], source: basis };
};

/** What a run carries of this fluid, flowing at this temperature, as if no viscosity were stated. */
const flowing = (fluid: (typeof FLUIDS)[number], temperatureC: number) =>
  fluidState({ purpose: 'other', fluid, pressureKpa: 0, temperatureC });

const oilRow = ({ what, column }: Cell): Shipped => ({
  numbers: [SAE_J300[Number(what) as keyof typeof SAE_J300][column - 1] as number],
  source: flowing('engine-oil', 100)?.basis ?? '',
});
/** Sea water is taken as fresh water and 4 %; the table of 80 deg C lies 2 % high. */
const freshWater = (temperatureC: number): number =>
  (flowing('raw-water', temperatureC)?.viscosityMm2PerS.likely ?? Number.NaN) / 1.04 / 1e6;
const fluidRow = ({ what }: Cell): Shipped => {
  const basis = flowing('raw-water', 20)?.basis ?? '';
  if (what === 'water-20') return { numbers: [1.023e-6, 2, freshWater(20)], source: basis, step: 1e-8 };
  if (what === 'water-80') return { numbers: [freshWater(80) * 1.02], source: basis, step: 2e-9 };
  const { kgPerM3, source } = FLUID_DENSITY[what as keyof typeof FLUID_DENSITY];
  return { numbers: [kgPerM3], source, step: 0.5 };
};
const emissivityRow = ({ what }: Cell): Shipped => {
  const { low, likely, high } = HOT_SKIN_EMISSIVITY;
  return { numbers: what === 'hot-skin' ? [likely] : [low, high], source: HOT_SKIN_SOURCE, step: 0.011 };
};
const ruleRow = ({ what }: Cell): Shipped => RULE_ROWS[what] ?? { numbers: [] };
const RULE_ROWS: Readonly<Record<string, Shipped>> = {
  breathing: {
    numbers: [...rule('breathing-longer', 100).numbers, ...rule('breathing-shorter', 100).numbers],
    source: ruleById('breathing-longer')?.source ?? '',
  },
  'slack-wanted': range('slack-wanted', 100),
  'clamp-spacing': rule('clamp-spacing'),
  'clamp-spacing-army': rule('clamp-spacing'),
  'burst-multiple': rule('burst-multiple'),
  'rock-twist': { ...rule('rock-twist'), numbers: [5, 70, ...rule('rock-twist').numbers, 90] },
  'taper-twist': { ...rule('taper-twist'), numbers: [5, 70, ...rule('taper-twist').numbers, 90] },
  'built-twist': { ...rule('built-twist'), numbers: [5, 70, ...rule('built-twist').numbers, 90] },
  'heat-cover-textile': { ...rule('heat-cover-textile'), numbers: [-54, ...rule('heat-cover-textile').numbers] },
  // how far two of its metals stand apart, an alloy's number, and the limit
  'galvanic-apart': { ...rule('galvanic-apart'), numbers: [270, 6061, ...rule('galvanic-apart').numbers] },
  'engine-slack': {
    ...rule('engine-slack'),
    numbers: [...rule('engine-first-support', 1 / 25.4).numbers, ...rule('engine-slack', 1 / 25.4).numbers],
  },
  'fuel-test-pressure': rule('fuel-test-pressure', 1 / KPA_PER_PSI),
  // The first number is the torque of one maker's band, beside those of a table.
  'hose-clamp-from-end': {
    ...rule('hose-clamp-from-end'),
    numbers: [35, ...rule('hose-clamp-from-end', 1 / 25.4).numbers],
  },
  'straight-tail': rule('straight-tail'),
  short: rule('clock-tolerance-short'),
  long: rule('clock-tolerance-long'),
  // suction, return, pressure
  'flow-speed': {
    numbers: [
      ...range('flow-speed-suction').numbers,
      ...range('flow-speed-return').numbers,
      ...range('flow-speed-pressure').numbers,
    ],
    source: ruleById('flow-speed-suction')?.source ?? '',
  },
  'aluminium-end-temperature': {
    ...rule('aluminium-end-temperature'),
    numbers: [-55, ...rule('aluminium-end-temperature').numbers],
  },
  'wiring-preferred': rule('wiring-preferred', 1 / 25.4),
  'clearance-wiring': rule('clearance-wiring', 1 / 25.4),
  'clearance-plain': rule('clearance-plain'),
  'hose-spacing': rule('hose-spacing'),
  rubber: { numbers: [mmToIn(JOINT_GAPS.rubber.gapMm), 1.6], source: JOINT_GAPS.rubber.source },
  fluoropolymer: { numbers: [mmToIn(JOINT_GAPS.fluoropolymer.gapMm), 0.64], source: JOINT_GAPS.fluoropolymer.source },
  'anti-static': { numbers: [ANTI_STATIC_OHM] },
  'static-conductivity': { ...rule('static-conductivity'), numbers: [2.5, ...rule('static-conductivity').numbers] },
  'drain-outlet-tilt': rule('drain-outlet-tilt'),
  'drain-outlet-limit': rule('drain-outlet-limit'),
  'drain-way-tilt': rule('drain-way-tilt'),
  'drain-shaft-level': rule('drain-shaft-level'),
  'drain-least-dash-maker': rule('drain-least-dash', -1),
  'drain-least-dash': { ...rule('drain-least-dash', -1), numbers: [...rule('drain-least-dash', -1).numbers, -12] },
};

const SHIPPED: Readonly<Record<string, (cell: Cell) => Shipped>> = {
  '1.3': ruleRow,
  '1.4a': ofTorque('army-hose-nut'),
  '1.4b': navy,
  '1.5': ({ what }) => ({ numbers: [BALL_INCH[-Number(what)] ?? Number.NaN], source: BALL_SOURCE }),
  '2.1': ruleRow,
  '3.1': lengthRow,
  '3.2': en853Row,
  '3.3': ruleRow,
  '3.9': ruleRow,
  '4.1': ofTorque('steel-37'),
  '4.2': ({ what }) => {
    const [least = Number.NaN, most = Number.NaN] = FLATS.byDash[-Number(what)] ?? [];
    return { numbers: least === most ? [least] : [least, most], source: FLATS.source };
  },
  '5.1': ({ what, column }) => ({
    numbers: [colebrook(Number(what), ROUGHNESS[column - 1] as number)],
    step: 1e-6,
  }),
  '5.5': ({ what }) => ({ numbers: [squareBendLoss(Number(what), 1)] }),
  '5.6': roughnessRow,
  '5.7': ({ what, printed }) => ({
    numbers: [numbersOf(printed)[0] as number, corrugatedFactor(1 / Number(what))],
    step: 5.1e-5,
  }),
  '5.8': ruleRow,
  '5.10': oilRow,
  '5.11': fluidRow,
  '6.4': ruleRow,
  '6.5': emissivityRow,
  '7.1': (cell) => (cell.row === 13 || cell.row === 14 ? clampRow(cell) : ruleRow(cell)),
  '8.1': ruleRow,
  '8.2': ruleRow,
  '8.3': (cell) => (cell.what === 'galvanic-apart' ? ruleRow(cell) : galvanicRow(cell)),
  '10.1': ruleRow,
};

/** Tables whose cells another test compares, one by one or as its worked examples. */
const ELSEWHERE: Readonly<Record<string, readonly [file: string, holds: string]>> = {
  '1.1': ['tests/models/partTables.test.ts', "'1.1'"],
  '3.4': ['tests/models/publishedTables.test.ts', "rowsOf('3.4')"],
  '3.5': ['tests/models/publishedTables.test.ts', "rowsOf('3.5')"],
  '3.6': ['tests/models/publishedTables.test.ts', "rowsOf('3.6')"],
  '3.8': ['tests/shared/published/cutLengths.test.ts', 'rattay.de'],
  '5.2': ['tests/shared/solve/flow/workedExamples.test.ts', 'published values 5.2'],
  '5.3': ['tests/shared/solve/flow/workedExamples.test.ts', 'published values 5.3'],
  '5.9': ['tests/shared/solve/flow/workedExamples.test.ts', 'published values 5.9'],
  '6.1': ['tests/shared/solve/heat/lookOut.test.ts', 'published-values 6.1'],
  '6.2': ['tests/shared/solve/heat/lookOut.test.ts', 'published and wrong'],
  '6.3': ['tests/shared/solve/heat/hoseRing.test.ts', 'exitance'],
};

/** Tables of which the product ships no figure as a figure, by name, and why. A table that is in none of the three lists fails. */
const NOT_SHIPPED: Readonly<Record<string, string>> = {
  '1.2': 'multiple-wire hose: all but its bores from memory; users have their own tables',
  '1.4c': 'torque by tube: from memory; the seen tables for hose nuts are shipped',
  '1.6': 'proof of one family of assemblies: the proof goes by the weakest part',
  '2.2': 'walls of rigid tube',
  '3.7': 'conventions, told in words where lengths are named',
  '3.10': 'hydraulic hose from memory; users have their own tables',
  '3.11': 'PTFE hose from memory; users have their own tables',
  '4.3': 'the halved torque of non-ferrous fittings is told in words',
  '5.4': 'examples for part-full pipe under a head',
  '7.2': 'facts in words',
  '9.1': 'grades of cores in fluids: see below',
  '9.2': 'facts in words',
};

describe('every figure shipped from a published table', () => {
  it.each(FIXTURE.tables.map(({ id, cells }) => [id, cells.length] as const))('table %s, %d cells', (id) => {
    const { cells, document } = FIXTURE.tables.find((table) => table.id === id) as FixtureTable;
    for (const cell of cells) {
      const { numbers, source, step = 1e-9 } = (SHIPPED[id] as (cell: Cell) => Shipped)(cell);
      const printed = numbersOf(cell.printed);
      const name = `${id}, ${cell.what}: ${cell.printed}`;
      expect(printed.length, name).toBeGreaterThan(0);
      expect(numbers.length, name).toBeGreaterThan(0);
      for (const [i, number] of numbers.entries())
        expect(Math.abs(number - (printed[i] ?? Number.NaN)), `${name}, ${number}`).toBeLessThanOrEqual(step);
      const named = cell.document ?? document;
      if (source !== undefined && named !== undefined) expect(source, name).toContain(named);
      if (source !== undefined && cell.read === 'memory') expect(source, name).toContain('from memory');
    }
  });

  it('every table is shipped, compared elsewhere, or named as not shipped; none twice', () => {
    const known = [...Object.keys(SHIPPED), ...Object.keys(ELSEWHERE), ...Object.keys(NOT_SHIPPED)];
    expect(known.toSorted()).toEqual(Object.keys(FIXTURE.rowsOfTables).toSorted());
    expect(FIXTURE.tables.map(({ id }) => id).toSorted()).toEqual(Object.keys(SHIPPED).toSorted());
  });

  it.each(Object.entries(ELSEWHERE))('table %s is compared in %s', (_, [file, holds]) => {
    expect(readFileSync(file, 'utf8')).toContain(holds);
  });

  it('every way to read a rule off a cell is used by one', () => {
    const used = FIXTURE.tables.flatMap(({ cells }) => cells.map(({ what }) => what));
    expect(Object.keys(RULE_ROWS).filter((what) => !used.includes(what))).toEqual([]);
  });

  it('every published figure of the rules is compared with a table or with the trade, or is no figure of a document', () => {
    const without = RULES.filter(
      ({ id, grade, value, unit }) =>
        grade === 'published' &&
        unit !== 'count' &&
        value !== 0 &&
        !compared.has(id) &&
        TRADE[id] === undefined &&
        CODE[id] === undefined &&
        OF_THE_PART[id] === undefined,
    );
    expect(
      without.map(({ id }) => id),
      'Add its cell to tests/fixtures/published/cells.json and its line to RULE_ROWS, or the words in which the trade has it to TRADE in tradeFigures.ts.',
    ).toEqual([]);
  });

  it('oil of SAE 40 is taken, and what is not known of its grade lies in the band: 30 to 50', () => {
    const at100 = flowing('engine-oil', 100)?.viscosityMm2PerS ?? { low: 99, likely: 0, high: 0 };
    const [from, to] = SAE_J300[40];
    expect(at100.likely).toBeGreaterThan(from);
    expect(at100.likely).toBeLessThan(to);
    expect(at100.low).toBeLessThanOrEqual(SAE_J300[30][0]);
    expect(at100.high).toBeGreaterThanOrEqual(SAE_J300[50][1]);
  });

  it('emissivities that were read lie in the bands that are taken: turbine 0.92, cast iron 0.64 to 0.78, stainless 0.36 to 0.44', () => {
    for (const read of [0.92, 0.64, 0.78]) {
      expect(read).toBeGreaterThanOrEqual(HOT_SKIN_EMISSIVITY.low);
      expect(read).toBeLessThanOrEqual(HOT_SKIN_EMISSIVITY.high);
    }
    const braid = COVER_EMISSIVITY['steel-braid'];
    for (const read of [0.36, 0.44]) {
      expect(read).toBeGreaterThanOrEqual(braid.low);
      expect(read).toBeLessThanOrEqual(braid.high);
    }
  });

  it('torque and flats have no size that is not printed', () => {
    const printed = (id: string) => FIXTURE.tables.find((table) => table.id === id)?.cells ?? [];
    const sizes = (id: string, columns: (cell: Cell) => boolean = () => true) =>
      printed(id)
        .filter(columns)
        .map(({ what }) => what.slice(1))
        .toSorted();
    const of = (byDash: object | undefined) => Object.keys(byDash ?? {}).toSorted();
    expect(of(torque('army-hose-nut')?.byDash)).toEqual(sizes('1.4a'));
    expect(of(torque('navy-steel')?.byDash)).toEqual(sizes('1.4b', ({ column }) => column === 1));
    expect(of(torque('navy-aluminium')?.byDash)).toEqual(sizes('1.4b', ({ column }) => column === 4));
    expect(of(torque('steel-37')?.byDash)).toEqual(sizes('4.1'));
    expect(of(FLATS.byDash)).toEqual(sizes('4.2'));
    expect(of(BALL_INCH)).toEqual(sizes('1.5'));
    expect(TORQUE_TABLES).toHaveLength(4);
  });

  it('the potentials of the four metals stand as far apart as their table has them', () => {
    const cells = FIXTURE.tables.find(({ id }) => id === '8.3')?.cells ?? [];
    const mv = (metal: EndMaterial) => Number(cells.find(({ what }) => what === metal)?.printed);
    for (const one of METALS)
      for (const other of METALS) {
        const { apartMv, eaten } = galvanicPair(one, other);
        expect(apartMv).toBe(Math.abs(mv(one) - mv(other)));
        expect(mv(eaten)).toBe(Math.min(mv(one), mv(other)));
      }
  });
});

/** Grades of PTFE, NBR, CPE, EPDM, silicone in a fluid: handbooks, from memory (table 9.1). */
const HANDBOOK_CORES = ['ptfe-smooth', 'nbr', 'cpe', 'epdm', 'silicone'] as const;
const HANDBOOK_GRADES = {
  petrol: ['A', 'B', 'B', 'X', 'X'],
  methanol: ['A', 'B', 'B', 'A', 'B'],
  diesel: ['A', 'A', 'B', 'X', 'C'],
  'engine-oil': ['A', 'A', 'A', 'X', 'B'],
  coolant: ['A', 'B', 'B', 'A', 'A'],
} as const;

describe('what nobody read is said to be from memory', () => {
  it('of a core in a fluid: every grade names where it is from', () => {
    const cells = CORES.flatMap((core) => FLUIDS.map((fluid) => fluidCoreCell(core, fluid))).filter(
      (cell) => cell !== undefined,
    );
    expect(cells.length).toBeGreaterThan(30);
    for (const { source } of cells)
      expect(source).toMatch(
        /from memory|common practice, no source|[a-z]+\.[a-z]{2,3}|Handbook|FAA|SAE|CFR|DOE|p\. \d/,
      );
  });

  it('and says no other than the handbooks do where it is from them: X is unsuitable, A never is', () => {
    for (const [fluid, grades] of Object.entries(HANDBOOK_GRADES))
      for (const [i, core] of HANDBOOK_CORES.entries()) {
        const cell = fluidCoreCell(core, fluid as keyof typeof HANDBOOK_GRADES);
        if (cell === undefined || !cell.source.includes('from memory')) continue;
        if (grades[i] === 'X') expect(cell.grade, `${core} in ${fluid}`).toBe(0);
        if (grades[i] === 'A') expect(cell.grade, `${core} in ${fluid}`).toBeGreaterThan(0);
      }
  });

  it('of a rule: what is published names a document, what is not says so', () => {
    for (const { id, source, grade } of RULES)
      if (grade === 'common-practice') expect(source, id).toMatch(/common practice, no source|from memory/);
      else expect(source, id).not.toMatch(/^common practice|from memory/);
  });
});

const REFERENCE = '../shared/reference/published-values.json';
const there = existsSync(REFERENCE);
interface ReferenceTable {
  readonly id: string;
  readonly source: string;
  readonly rows: readonly { readonly tag: string; readonly cells: readonly (string | number | null)[] }[];
}

describe.skipIf(!there)(
  `the figures typed here${there ? '' : ' (skipped: published values not beside the checkout)'}`,
  () => {
    const tables = there ? (JSON.parse(readFileSync(REFERENCE, 'utf8')) as { tables: ReferenceTable[] }).tables : [];

    it('no table and no row was added or taken away without being looked at', () => {
      expect(Object.fromEntries(tables.map(({ id, rows }) => [id, rows.length]))).toEqual(FIXTURE.rowsOfTables);
    });

    it('grades of cores in fluids, table 9.1, stand so', () => {
      const rows = tables.find(({ id }) => id === '9.1')?.rows ?? [];
      const names = {
        petrol: 'petrol',
        methanol: 'methanol',
        diesel: 'diesel',
        'engine-oil': 'engine oil',
        coolant: 'glycol',
      };
      for (const [fluid, grades] of Object.entries(HANDBOOK_GRADES)) {
        const row = rows.find(({ cells }) => String(cells[0]).startsWith(names[fluid as keyof typeof names]));
        expect(row?.tag).toBe('MEMORY');
        expect([1, 3, 4, 5, 6].map((i) => row?.cells[i])).toEqual([...grades]);
      }
    });

    it.each(FIXTURE.tables.map(({ id }) => [id]))('stand so in table %s, read so, in that document', (id) => {
      const { cells, document } = FIXTURE.tables.find((table) => table.id === id) as FixtureTable;
      const table = tables.find((one) => one.id === id) as ReferenceTable;
      for (const { row, column, printed, read, document: own } of cells) {
        const found = table.rows[row];
        expect(found?.cells[column], `${id} row ${row}`).toBe(printed);
        expect(found?.tag.toLowerCase()).toBe(read);
        if (document !== undefined) expect(table.source).toContain(document);
        if (own !== undefined) expect(sourceOf(table, row)).toContain(own);
      }
    });
  },
);

/** A row's source; "same" is that of the nearest row above that names one. */
function sourceOf(table: ReferenceTable, row: number): string {
  const text = String(table.rows[row]?.cells.at(-1));
  return text.startsWith('same') && row > 0 ? `${text} ${sourceOf(table, row - 1)}` : text;
}

/** The numbers of a printed cell: `100-120`, `1 1/4 - 1 3/4`, `5/64`, `+7 / -3 mm`, `1e-7`, `-10 / -12`; `8+/-2` are two. */
function numbersOf(printed: string | number): number[] {
  if (typeof printed === 'number') return [printed];
  const text = printed.replaceAll('+/-', ' ');
  return [
    ...text.matchAll(/(?<![\d.])(-?)(\d+ )?(\d+)\/(\d+)|(?<![\d.])(-?\d+(?:\.\d+)?(?:e-?\d+)?)|(\d+(?:\.\d+)?)/g),
  ].map(([, sign, whole, top, bottom, plain, after]) => {
    if (top === undefined) return Number(plain ?? after);
    const value = Number(whole ?? 0) + Number(top) / Number(bottom);
    return sign === '-' ? -value : value;
  });
}
