import { describe, expect, test } from 'vitest';
import { readClock } from '../../../../shared/document/clock/readClock.ts';
import type { End } from '../../../../shared/document/parts/schema.ts';
import { CLOCK_DIALECTS, type Paperwork, type Service } from '../../../../shared/document/project/schema.ts';
import { NO_SWIVEL_SENTENCE, NO_SWIVEL_STEPS } from '../../../../shared/document/wording/noSwivelWords.ts';
import { buildSheetPdf, cutListCsv, type SheetInput } from '../../../../shared/sheets/index.ts';
import { COOLER_LAY, COOLER_RUN, DRAIN_LAY, DRAIN_RUN, REPORT, sampleInput } from '../../../arbitraries/reports.ts';
import { canReadPdf, pdfPages, pdfWords, WHY_SKIPPED } from '../readPdf.ts';

const MIDWAY = { ...COOLER_LAY, clock: { kind: 'angle', deg: 247.4, toleranceDeg: 3 } } as const;

function coolerInput(paperwork: Paperwork, ends: Partial<End> = {}): SheetInput {
  const run = {
    ...COOLER_RUN,
    a: { ...COOLER_RUN.a, end: { ...COOLER_RUN.a.end, ...ends } },
    b: { ...COOLER_RUN.b, end: { ...COOLER_RUN.b.end, ...ends } },
  };
  return sampleInput({
    project: { name: 'Bench car', exampleData: true, paperwork },
    runs: [run],
    report: { ...REPORT, lays: [MIDWAY], findings: [] },
  });
}

async function textOf(input: SheetInput): Promise<string> {
  return pdfPages(await buildSheetPdf(input)).join(' ');
}

describe.skipIf(!canReadPdf)(`how papers speak (${canReadPdf ? 'with poppler' : WHY_SKIPPED})`, () => {
  test.each(CLOCK_DIALECTS)(
    'the sentence for the shop in %s reads back as the hose of the report',
    async (clockDialect) => {
      const text = await textOf(coolerInput({ clockDialect }));
      const sentence = /For the hose shop \([^)]*\): (Hose straight.*?outlet(?:\.| at 247\.4° clockwise from 12))/.exec(
        text,
      )?.[1];
      const read = readClock(sentence ?? '');
      expect(read, sentence).toMatchObject({ ok: true, shapes: [{ clockDeg: expect.closeTo(247.4, 6) }] });
      if (read.ok) expect(read.shapes).toHaveLength(1);
    },
  );

  test('the part code says what it loses: 247.4 degrees is code 49, 245 degrees, 2.4 off', async () => {
    const text = await textOf(coolerInput({}));
    expect(text).toContain(
      'Part code 49 (angle over 5, as in part numbers of MIL-DTL-83796/5), which stands for 245°: 2.4° off.',
    );
  });

  test('two fixed angled ends: said, the twist of the tolerance told, the steps listed; a swivel needs none of it', async () => {
    const text = await textOf(coolerInput({}, { turning: 'fixed' }));
    expect(text).toContain(NO_SWIVEL_SENTENCE);
    // 3 degrees over 376.159 mm of live hose is 7.98 degrees a metre.
    expect(text).toContain('3° over the live length is 8° of twist a metre.');
    for (const [i, step] of NO_SWIVEL_STEPS.entries())
      expect(text).toContain(`No swivel, ${i + 1}: ${step.slice(0, 30)}`);
    expect(await textOf(coolerInput({}))).not.toContain('NO SWIVEL');
  });

  test('fractions to 1/32 where the project asks for them', async () => {
    expect(await textOf(coolerInput({}))).toContain('cut 420.2 mm (16 9/16 in)');
    // 420.159 mm is 16.5417 in: up to the next 1/32 that is 16 9/16 again; C of 22 mm is 0.866 in, 28/32.
    const fine = await textOf(coolerInput({ finestInch: 32 }, { shoulderToMouthMm: 21.4 }));
    expect(fine).toContain('21.4 mm (27/32 in) at END A');
    expect(await textOf(coolerInput({}, { shoulderToMouthMm: 21.4 }))).toContain('21.4 mm (13/16 in) at END A');
  });

  test('Letter where the project asks for it, and insertion depth as the table of ends gives it', async () => {
    const input = coolerInput(
      { paper: 'Letter' },
      { insertionDepthMm: 19.5, crimpDie: '24', crimpFromMm: 24.75, crimpToMm: 25.05 },
    );
    const bytes = await buildSheetPdf(input);
    expect(pdfWords(bytes)[0]?.pageWidthMm).toBeCloseTo(215.9, 2);
    const text = pdfPages(bytes).join(' ');
    expect(text).toContain('Insertion depth marked from the cut: 19.5 mm (3/4 in) at END A');
    expect(text).toContain('Crimp: die 24, finished 24.75 to 25.05 mm on the flats.');
    expect(text).toContain('mouth A: hose in to here 19.5 mm');
  });

  test('a nut whose reach is given has an end-of-nut length; one whose is not says which figure lacks', async () => {
    const drain = (end: Partial<End>): SheetInput =>
      sampleInput({
        runs: [{ ...DRAIN_RUN, a: { ...DRAIN_RUN.a, end: { ...DRAIN_RUN.a.end, ...end } } }],
        report: { ...REPORT, lays: [DRAIN_LAY], findings: [] },
      });
    const known = await textOf(drain({ nutReachMm: 3 }));
    expect(known).toContain('End of nut 299.4 mm (11 13/16 in)');
    expect(known).toContain('Cut length, plus 29.7 mm at END A');
    const unknown = await textOf(drain({}));
    expect(unknown).toContain('the table of ends lacks how far the nut of END A reaches past its seat (nut_reach_mm)');
    expect(unknown).toContain('Flare to centreline 296.4 mm');
  });
});

test('the cut list gives the code only where it is asked for, and never without its words', () => {
  expect(cutListCsv(coolerInput({}))).not.toContain('eighths');
  // 514.159 mm is 20.2425 in: 20-2/8 in upward, 20.25 in.
  expect(cutListCsv(coolerInput({ codedLength: 'eighths' }))).toContain('0202 in inches and eighths = 20-2/8 in');
  expect(cutListCsv(coolerInput({ codedLength: 'hundredths' }))).toContain('02025 in hundredths of an inch = 20.25 in');
});

describe.skipIf(!canReadPdf)('a hose held by hose clamps on a boat, on paper', () => {
  const onBoat = (joint: End['joint'], service: Service): Promise<string> => {
    const run = { ...COOLER_RUN, run: { ...COOLER_RUN.run, service } };
    const clamped = (side: 'a' | 'b') => ({ ...run[side], end: { ...run[side].end, joint } });
    const project = { name: 'Cruiser', exampleData: true, vehicle: 'boat' } as const;
    const runs = [{ ...run, a: clamped('a'), b: clamped('b') }];
    return textOf(sampleInput({ project, runs, report: { ...REPORT, lays: [MIDWAY], findings: [] } }));
  };

  test('an exhaust asks for its test in the bay and has a record for it; no proof by the multiple', async () => {
    const exhaust = { purpose: 'wet-exhaust', fluid: 'exhaust-water', pressureKpa: 5, temperatureC: 80 } as const;
    const text = await onBoat('clamped', exhaust);
    expect(text).toContain('ONCE IT IS IN THE BAY');
    expect(text).toMatch(/holds 27\.6 kPa \(4 psi\) for 5\s+minutes/);
    expect(text).toContain('The exhaust at 27.6 kPa (4 psi): from, to');
    expect(text).toContain('hose that ran dry');
    expect(text).not.toContain('Proof: medium');
    expect(text).not.toContain('with liquid');
    expect(text).toContain('takes a saw');
    expect(text).toContain('Not proof-tested at the bench');
    expect(text).not.toContain('the weakest part known');
  });

  test('a crimped oil hose has none of it', async () => {
    const oil = { purpose: 'oil-cooler', fluid: 'engine-oil', pressureKpa: 500, temperatureC: 110 } as const;
    const text = await onBoat('crimp', oil);
    expect(text).not.toContain('ONCE IT IS IN THE BAY');
    expect(text).toContain('Proof: medium');
    expect(text).toContain('the weakest part known');
  });
});
