import { expect, it } from 'vitest';
import { describeProblem } from '../../../../shared/base/result.ts';
import { columnsOf, PART_KINDS } from '../../../../shared/document/parts/columns.ts';
import { parsePartTables } from '../../../../shared/document/parts/parsePartTables.ts';
import { partTableCsv } from '../../../../shared/document/parts/partTableCsv.ts';
import { sampleEnd, sampleHose, sampleSleeve, sampleTables } from '../../../arbitraries/projects.ts';

const SLEEVE_HEADINGS =
  'id,name,inside_diameter_mm,outside_diameter_mm,max_temperature_c,weight_kg_per_m,provenance,source';

function sleeves(...rows: string[]): ReturnType<typeof parsePartTables> {
  return parsePartTables([{ path: 'sleeves.csv', kind: 'sleeves', text: [SLEEVE_HEADINGS, ...rows].join('\n') }]);
}

function problemsOf(result: ReturnType<typeof parsePartTables>): string[] {
  if (result.ok) throw new Error('expected problems');
  return result.problems.map(describeProblem);
}

it('reads a table', () => {
  expect(sleeves('s-16,"Sleeve, red",16,22.5,260,.2,own,"measured, caliper"')).toEqual({
    ok: true,
    value: {
      hoses: [],
      ends: [],
      adapters: [],
      clamps: [],
      rolls: [],
      sleeves: [
        {
          id: 's-16',
          name: 'Sleeve, red',
          insideDiameterMm: 16,
          outsideDiameterMm: 22.5,
          maxTemperatureC: 260,
          weightKgPerM: 0.2,
          provenance: 'own',
          source: 'measured, caliper',
        },
      ],
    },
  });
});

it('takes semicolons, tabs, a byte order mark, CR LF, blank rows and columns in any order', () => {
  const text = `\uFEFFsource;id;name;inside_diameter_mm;outside_diameter_mm;max_temperature_c;weight_kg_per_m;provenance\r\n\r\nmine;s;S;16;22;260;0;own\r\n;;;;;;;\r\n`;
  const read = parsePartTables([{ path: 's.csv', kind: 'sleeves', text }]);
  expect(read.ok && read.value.sleeves.map((s) => s.id)).toEqual(['s']);
  const tabs = parsePartTables([{ path: 's.csv', kind: 'sleeves', text: text.replaceAll(';', '\t') }]);
  expect(tabs).toEqual(read);
});

it('reads back what it writes, for every kind', () => {
  const tables = {
    hoses: [
      sampleHose(),
      sampleHose({
        id: 'h2',
        pressureByTemperature: [
          [20, 17000],
          [150.5, 13600],
        ],
        listedFluids: ['engine-oil', 'petrol'],
        name: 'a "quoted", name',
        weightKgPerM: 0.1 + 0.2,
        bendingStiffnessNmm2: 1e21,
        conductiveCore: false,
      }),
    ],
    ends: [sampleEnd({ bendAngleDeg: 22.5 })],
    sleeves: [sampleSleeve()],
    adapters: [],
    clamps: [],
    rolls: [],
  };
  const files = PART_KINDS.map((kind) => ({ path: `${kind}.csv`, kind, text: partTableCsv(kind, tables[kind]) }));
  expect(parsePartTables(files)).toEqual({ ok: true, value: tables });
  const { conductiveCore: _none, ...unmarked } = sampleHose();
  const text = partTableCsv('hoses', [unmarked]);
  const read = parsePartTables([{ path: 'h.csv', kind: 'hoses', text }]);
  expect(read.ok && read.value.hoses[0]).toEqual(unmarked);
});

it('heads its columns in snake case of the program keys', () => {
  expect(
    columnsOf('sleeves')
      .map((c) => c.heading)
      .join(','),
  ).toBe(SLEEVE_HEADINGS);
  expect(
    columnsOf('hoses')
      .filter((c) => c.optional)
      .map((c) => c.heading),
  ).toEqual([
    'conductive_core',
    'weight_kg_per_m',
    'bending_stiffness_nmm2',
    'bending_stiffness_method',
    'convolution_pitch_mm',
    'pressure_by_temperature',
    'vacuum_limit_kpa',
    'listed_fluids',
    'marking',
    'proof_pressure_kpa',
    'burst_pressure_kpa',
    'price_per_m',
  ]);
});

it('refuses a decimal comma and shows how it could be read', () => {
  expect(problemsOf(sleeves('s,S,"16,5","1,234","12,345.6",0,own,x'))).toEqual([
    'sleeves.csv row 2, inside_diameter_mm: numbers take a decimal point, not a comma; write 16.5, got "16,5"',
    'sleeves.csv row 2, outside_diameter_mm: numbers take a decimal point and no other mark; this could be read as 1.234 or as 1234: write the one that is meant, got "1,234"',
    'sleeves.csv row 2, max_temperature_c: numbers take a decimal point and no other mark; write 12345.6, got "12,345.6"',
  ]);
});

it('names every bad cell by file, row as a spreadsheet counts, and column', () => {
  const result = sleeves('s,S,16,22,260,0.1,own,x', '', 'T!,S,-16,14 mm,hot,,mine,x', 's,S,16,15,260,0,own,x');
  expect(problemsOf(result)).toEqual([
    'sleeves.csv row 4, outside_diameter_mm: expected the number alone, 14; the unit is in the heading outside_diameter_mm, got "14 mm"',
    'sleeves.csv row 4, max_temperature_c: expected a number with a decimal point, got "hot"',
    'sleeves.csv row 4, id: expected lower-case letters, digits and hyphens, got "T!"',
    'sleeves.csv row 4, inside_diameter_mm: expected a number above 0, got -16',
    'sleeves.csv row 4, weight_kg_per_m: missing; expected a number',
    'sleeves.csv row 4, provenance: expected one of "published", "own", "example", got "mine"',
    'sleeves.csv row 5, outside_diameter_mm: expected above inside_diameter_mm, 16, got 15',
  ]);
});

it('names unknown, missing and repeated columns', () => {
  const text = 'id,name,inside_diameter,outside_diameter_mm,max_temperature_c,weight_kg_per_m,provenance,source,id\n';
  const problems = problemsOf(parsePartTables([{ path: 's.csv', kind: 'sleeves', text }]));
  expect(problems[0]).toMatch(/^s\.csv row 1: unknown column; known: id, name, .*, got "inside_diameter"$/);
  expect(problems.slice(1)).toEqual([
    's.csv row 1: the column inside_diameter_mm is missing',
    's.csv row 1: the column is there twice, got "id"',
  ]);
  expect(problemsOf(parsePartTables([{ path: 's.csv', kind: 'sleeves', text: '' }]))).toHaveLength(1);
});

it('finds an id taken in another file of its kind', () => {
  const text = partTableCsv('sleeves', [sampleSleeve()]);
  const problems = problemsOf(
    parsePartTables([
      { path: 'one.csv', kind: 'sleeves', text },
      { path: 'two.csv', kind: 'sleeves', text },
    ]),
  );
  expect(problems).toEqual(['two.csv row 2, id: the id is taken by one.csv row 2, got "sleeve-16"']);
});

it('says so when a cell holds a comma that was not quoted, and when a quote is not closed', () => {
  expect(problemsOf(sleeves('s,S,16,22,260,0,own,measured, caliper'))[0]).toMatch(/row 2: 9 cells under 8 headings/);
  expect(problemsOf(sleeves('s,"S,16,22,260,0,own,x'))[0]).toMatch(/row 2: not CSV/);
});

it('tells a builder who writes -8 to write 8', () => {
  const text = partTableCsv('hoses', sampleTables().hoses).replace(',8,', ',-8,');
  expect(problemsOf(parsePartTables([{ path: 'h.csv', kind: 'hoses', text }]))).toEqual([
    'h.csv row 2, dash: write the dash size without its dash: 8, got "-8"',
  ]);
});
