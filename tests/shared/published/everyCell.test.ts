import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { BALL_INCH, BALL_SOURCE } from '../../../shared/document/assembly/ballTest.ts';
import { RULES } from '../../../shared/document/rules/index.ts';
import { FLATS } from '../../../shared/document/torque/torqueTables.ts';
import { squareBendLoss } from '../../../shared/solve/flow/bendLoss.ts';
import { corrugatedFactor } from '../../../shared/solve/flow/corrugatedLoss.ts';
import { colebrook } from '../../../shared/solve/flow/darcyFactor.ts';
import { type Cell, FIXTURE, type FixtureTable, numbersOf, type Shipped } from './cells.ts';
import {
  clampRow,
  emissivityRow,
  en853Row,
  fluidRow,
  galvanicRow,
  lengthRow,
  navy,
  ofTorque,
  oilRow,
  ROUGHNESS,
  roughnessRow,
} from './figureRows.ts';
import { compared, RULE_ROWS, ruleRow } from './ruleRows.ts';
import { CODE, OF_THE_PART, TRADE } from './tradeFigures.ts';

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
});
