import Papa from 'papaparse';
import { expect, test } from 'vitest';
import { utf8Bytes } from '../../../../shared/sheets/csv/utf8Bytes.ts';
import { CUT_LIST_COLUMNS, cutListCsv } from '../../../../shared/sheets/index.ts';
import { COOLER_RUN, DRAIN_RUN, REPORT, sampleInput } from '../../../arbitraries/reports.ts';

type Row = Record<string, string>;
function rows(csv: string): Row[] {
  const { data, errors } = Papa.parse<Row>(csv, { header: true, skipEmptyLines: true });
  expect(errors).toEqual([]);
  return data;
}

test('every run has a row with every column, in the given order', () => {
  const table = rows(cutListCsv(sampleInput()));
  expect(table.map((r) => r['run'])).toEqual(['cooler-feed', 'turbo-drain', 'fuel-feed', 'scavenge']);
  expect(Object.keys(table[0]!)).toEqual([...CUT_LIST_COLUMNS]);
});
test('the known answer: 514.2 overall, 47 and 47 off, 420.2 cut, clock 270', () => {
  expect(rows(cutListCsv(sampleInput()))[0]).toMatchObject({
    number: '1',
    state: 'cut',
    dash: '8',
    cut_length_mm: '420.2',
    cut_length_in: '16 9/16 in',
    cut_tolerance_mm: '4.7',
    cut_tolerance_in: '3/16 in',
    overall_mm: '514.2',
    c_a_mm: '47.0',
    c_b_mm: '47.0',
    slack_percent: '5.1',
    clock_deg: '270',
    clock_tolerance_deg: '3',
    outcome: 'laid',
    example_data: 'EXAMPLE DATA',
    input_hash: REPORT.project.inputHash,
  });
});
test('printed lengths agree with the report: cut never short, overall within its last digit', () => {
  const table = rows(cutListCsv(sampleInput()));
  for (const row of table.filter((r) => r['cut_length_mm'] !== '')) {
    const lay = REPORT.lays.find((l) => l.run === row['run'])!;
    const over = Number(row['cut_length_mm']) - lay.cutLengthMm;
    expect(over).toBeGreaterThanOrEqual(-1e-9);
    expect(over).toBeLessThan(0.1);
    expect(Math.abs(Number(row['overall_mm']) - lay.overallLengthMm)).toBeLessThanOrEqual(0.05);
  }
});
test('what may not be cut says so beside its number; without a lay there are no lengths', () => {
  const [, drain, fuel, closed] = rows(cutListCsv(sampleInput()));
  expect(drain).toMatchObject({ state: 'cut', clock_deg: 'free', clock_from_end_a: '' });
  expect(fuel).toMatchObject({ state: 'DO NOT CUT', outcome: 'near-miss', sleeve: 'fire-sleeve-16' });
  expect(fuel?.['reasons_not_to_cut']).toContain('exhaust manifold');
  expect(closed).toMatchObject({
    state: 'DO NOT CUT',
    outcome: 'no-way',
    cut_length_mm: '',
    overall_mm: '',
    clock_deg: '',
  });
});
test('a picked run keeps its number of the whole project', () => {
  expect(rows(cutListCsv(sampleInput(), ['turbo-drain'])).map((r) => r['number'])).toEqual(['2']);
});
test('convoluted hose has no tolerance from the table', () => {
  const run = { ...COOLER_RUN, hose: { ...COOLER_RUN.hose, core: 'ptfe-convoluted' as const } };
  expect(rows(cutListCsv(sampleInput({ runs: [run] })))[0]).toMatchObject({
    cut_tolerance_mm: '',
    cut_tolerance_in: '',
  });
});
test('names with commas, quotes and formula signs come through unharmed and unrun', () => {
  const name = '=HYPERLINK("x"), "nasty"\nname';
  const run = { ...DRAIN_RUN, run: { ...DRAIN_RUN.run, name } };
  const csv = cutListCsv(sampleInput({ runs: [run] }));
  expect(rows(csv)[0]?.['name']).toBe(`'${name}`);
});
test('UTF-8 as the host writes it, whatever the letters', () => {
  const text = 'a° Ø ą 漢 😀 \ud800 \udc00x';
  expect([...utf8Bytes(text)]).toEqual([...new TextEncoder().encode(text)]);
});
test('a limit that the project sets for itself stands beside each run it holds for, with its reason', () => {
  const { project } = sampleInput();
  const overrides = [
    { rule: 'clearance-hot', run: COOLER_RUN.run.id, value: 32, reason: 'sleeved over its whole length' },
    { rule: 'clamp-spacing', value: 700, reason: 'stiff hose' },
  ];
  const [cooler, drain] = rows(cutListCsv(sampleInput({ project: { ...project, overrides } })));
  expect(cooler?.['limits_set_by_hand']).toMatch(
    /: 32 mm instead of 76.2 mm: sleeved over .* \| .*: 700 mm instead of .* mm: stiff hose$/,
  );
  expect(drain?.['limits_set_by_hand']).toMatch(/^[^|]*: 700 mm instead of [^|]*: stiff hose$/);
  expect(rows(cutListCsv(sampleInput()))[0]?.['limits_set_by_hand']).toBe('');
});
