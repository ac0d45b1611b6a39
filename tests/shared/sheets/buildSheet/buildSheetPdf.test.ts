import { beforeAll, describe, expect, test } from 'vitest';
import { degreesApart, radiansToDegrees } from '../../../../shared/base/units.ts';
import { lengthsOf } from '../../../../shared/document/lay/lengthsOf.ts';
import type { End } from '../../../../shared/document/parts/schema.ts';
import { cutSquarenessMm, en853Tolerance, lengthTolerance } from '../../../../shared/document/rules/lengthTolerance.ts';
import { clockFace } from '../../../../shared/sheets/clock/clockFace.ts';
import { wrapStrip } from '../../../../shared/sheets/clock/wrapStrip.ts';
import { formatCutLength, formatLengthBoth, formatMm } from '../../../../shared/sheets/format/index.ts';
import { buildSheetPdf, type SheetRun } from '../../../../shared/sheets/index.ts';
import {
  COOLER_LAY,
  COOLER_RUN,
  DRAIN_LAY,
  DRAIN_RUN,
  FINDINGS,
  FUEL_LAY,
  FUEL_RUN,
  REPORT,
  sampleInput,
  sampleLay,
} from '../../../arbitraries/reports.ts';
import {
  canReadPdf,
  pdfLines,
  pdfPages,
  pdfStrokes,
  pdfWords,
  type Stroke,
  WHY_SKIPPED,
  type Word,
} from '../readPdf.ts';

/** mm. Reading a coordinate back costs two roundings of a few microns; a printer's own error is a hundred times that. */
const ON_PAPER_MM = 0.02;

describe.skipIf(!canReadPdf)(`build sheets read back (${canReadPdf ? 'with poppler' : WHY_SKIPPED})`, () => {
  let bytes: Uint8Array;
  let pages: string[];
  let sheet: Record<string, string>;

  beforeAll(async () => {
    bytes = await buildSheetPdf(sampleInput());
    pages = pdfPages(bytes);
    sheet = Object.fromEntries(
      REPORT.lays.map((lay) => [lay.run, pages.filter((p) => p.includes(`${lay.run} · page `)).join(' ')]),
    );
  });

  test('one to three pages for each hose, every page with its head and foot', () => {
    expect(pages).toHaveLength(3 + 3 + 3 + 1);
    for (const page of pages) {
      expect(page).toContain('EXAMPLE DATA');
      expect(page).toContain('Hosewright advises; it never certifies a hose.');
      expect(page).toContain('Printed 2026-03-14');
      expect(page).toContain(REPORT.project.inputHash.slice(0, 16));
    }
  });

  test('life: what is usual, and the day it is due where it is stated when the hose was made', async () => {
    const told = async (madeOn: string | undefined): Promise<string> => {
      const input = sampleInput();
      const runs = input.runs.map((run) => ({
        ...run,
        hose: { ...run.hose, core: 'nbr' as const },
        run: madeOn === undefined ? run.run : { ...run.run, madeOn },
      }));
      return pdfPages(await buildSheetPdf({ ...input, runs })).join(' ');
    };
    // printed 2026-03-14; rubber in an engine bay 5 years
    expect(await told('2021-03')).toContain('Made 2021-03, as printed along it; due 2026-03.');
    expect(await told('2021-02')).toContain('Made 2021-02, as printed along it; due 2026-02, which is past.');
    expect(await told(undefined)).toContain('usually 5 years from the day it was made. Made ________');
  });

  test('the known answer is printed: 420.2 mm cut of 514.2 overall, C 47 and 47, clock 270, strip 37.0 on 49.3', () => {
    const text = sheet['cooler-feed']!;
    for (const words of [
      '420.2 mm',
      '16 9/16 in',
      'cut 420.2 mm (16 9/16 in)',
      'overall 514.2 mm (20 1/4 in)',
      'Overall is from the seat centreline of END A to the seat centreline of END B, measured parallel to the straight hose.',
      'CLOCK 270°',
      'Tolerance ± 3°',
      "Look from END A along the hose to END B. Turn it until the outlet of END B points to 12 o'clock. The outlet of END A then points to 9 o'clock.",
      "Look from END B along the hose to END A. Turn it until the outlet of END A points to 12 o'clock. The outlet of END B then points to 9 o'clock.",
      'NOT THIS',
      '90° is the mirror image: 180° off, and scrap.',
      '37.0 mm for 270°, once round 49.3 mm',
      'Turned so that the outlet of END B points straight down END A outlet toward you END B',
      'Turned so that the outlet of END A points straight down END A outlet away from you END B',
    ])
      expect(text).toContain(words);
    expect(text).not.toContain('DO NOT CUT');
  });

  test('every length on paper is one of the report, the parts or their sums, and no other', () => {
    for (const [run, known] of [
      ['cooler-feed', knownLengths(COOLER_RUN, COOLER_LAY)],
      ['fuel-feed', knownLengths(FUEL_RUN, FUEL_LAY)],
    ] as const) {
      const found = [...sheet[run]!.matchAll(/(-?\d+\.\d) mm/g)].map((m) => m[1]!);
      expect(found.length).toBeGreaterThan(15);
      for (const length of found) expect(known, `${length} mm on the sheet of ${run}`).toContain(length);
    }
  });

  test('each value stands beside its own name', async () => {
    const lines = pdfLines(await buildSheetPdf(sampleInput(), ['fuel-feed']));
    for (const [name, value] of [
      ['Overall', formatLengthBoth(FUEL_LAY.overallLengthMm)],
      ['C of END A', formatLengthBoth(FUEL_LAY.cutOffMm.a)],
      ['C of END B', formatLengthBoth(FUEL_LAY.cutOffMm.b)],
      ['Sleeve, at least', formatCutLength(FUEL_LAY.cutLengthMm + 6.35)],
      ['Outside, bore', '15.7 mm, 10.7 mm'],
      ['Live, taut', `${formatMm(FUEL_LAY.liveLengthMm)}, ${formatMm(FUEL_LAY.tautLengthMm)}; slack 5.3 %`],
      ['pass-through bulkhead, middle', '148.2 mm (5 13/16 in)'],
      ['clamp frame-1, middle', '402.9 mm (15 7/8 in)'],
      ['cut', formatCutLength(FUEL_LAY.cutLengthMm)],
      ['overall', formatLengthBoth(FUEL_LAY.overallLengthMm)],
    ] as const)
      expect(
        lines.some((line) => line.includes(`${name} ${value}`)),
        `${name} ${value}`,
      ).toBe(true);
  });

  test('wherever a length stands in both units, they say the same length', () => {
    const both = [...pages.join(' ').matchAll(/(-?\d+\.\d) mm \((-?)(?:(\d+) )?(\d+)(?:\/(\d+))? in\)/g)];
    expect(both.length).toBeGreaterThan(40);
    for (const [text, mm, sign, whole, top, bottom] of both) {
      const inches = (Number(whole ?? 0) + Number(top) / Number(bottom ?? 1)) * (sign === '-' ? -1 : 1);
      expect(Math.abs(inches * 25.4 - Number(mm)), text).toBeLessThan(25.4 / 16 + 0.1);
    }
  });

  test('findings: word, numbers, source, dissent, mend and the reason of an override', () => {
    const text = sheet['cooler-feed']!;
    for (const words of ['LOOK', 'NOTE', 'OVERRIDDEN: same layout ran two seasons', 'common practice, no source'])
      expect(text).toContain(words);
    expect(text).toContain('Others: a vendor: 1.5 x radius; others 1 to 2 hose diameters');
    expect(sheet['fuel-feed']).toContain('STOP');
    expect(sheet['fuel-feed']).toContain('Mend: move clamp frame-1 20 mm outward, or fit a metal shield');
  });

  test('a hose that may not be cut says so on every page, with the reasons, and has nothing to sign', () => {
    const text = pages.filter((p) => p.includes('fuel-feed · page '));
    for (const page of text) expect(page).toContain('DO NOT CUT');
    expect(text[0]).toContain(FUEL_LAY.reason);
    expect(text[0]).toContain(FINDINGS[2]!.message);
    expect(text[0]).toContain('NOT TO BE CUT: FOR INFORMATION ONLY');
    expect(text.join(' ')).not.toContain('SIGNED');
  });

  test('a run without a way gets a page that says why, with no lengths to cut', () => {
    const text = sheet['scavenge']!;
    expect(text).toContain('No way from Pan, out to Scavenge pump, in keeps a centreline radius');
    expect(text).not.toContain('WHAT TO CUT');
    expect(text).not.toContain(formatMm(333.3));
  });

  test('a straight end frees the clock: said in words, no faces, no strip, nothing to measure', () => {
    const text = sheet['turbo-drain']!;
    expect(text).toContain('CLOCK FREE.');
    expect(text).toContain(formatCutLength(DRAIN_LAY.cutLengthMm));
    for (const words of ['NOT THIS', 'Wrap strip', 'Clock, measured']) expect(text).not.toContain(words);
  });

  test('what must be threaded on first is listed: sleeve, grommet, clamps', async () => {
    const lay = { ...FUEL_LAY, outcome: 'laid' as const };
    const input = sampleInput({ runs: [FUEL_RUN], report: { ...REPORT, lays: [lay], findings: [] } });
    const text = pdfPages(await buildSheetPdf(input)).join(' ');
    expect(text).toContain('BEFORE THE SECOND END GOES ON');
    expect(text).toContain('Sleeve Fire sleeve, silicone on glass, cut at least 798.8 mm (31 1/2 in)');
    expect(text).toContain('Grommet or ferrule of pass-through bulkhead slid on.');
    expect(text).toContain('Clamp frame-1 slid on');
    expect(text).toContain('Fuel: no flame, spark or hot work near');
  });

  test('the check bar is 100 mm and 4 in on paper', () => {
    const lines = levelLines(pdfStrokes(bytes, 1));
    expect(lines.filter((mm) => Math.abs(mm - 100) < ON_PAPER_MM)).toHaveLength(1);
    expect(lines.filter((mm) => Math.abs(mm - 101.6) < ON_PAPER_MM)).toHaveLength(1);
  });

  test('the wrap strip is 1:1: line B to line A the arc, line B to line B once round', () => {
    const strip = wrapStrip(COOLER_RUN.hose.outsideDiameterMm, 270);
    const upright = uprightLines(pdfStrokes(bytes, 1), 15);
    expect(upright).toHaveLength(3);
    const [left, ...others] = upright;
    const fromLeft = others.map((x) => x - left!).sort((x, y) => x - y);
    expect(Math.abs(fromLeft[0]! - strip.arcMm)).toBeLessThan(ON_PAPER_MM);
    expect(Math.abs(fromLeft[1]! - strip.circumferenceMm)).toBeLessThan(ON_PAPER_MM);
  });

  test('the letters on the strip stand at their own lines', () => {
    const [lineB, lineA, joining] = uprightLines(pdfStrokes(bytes, 1), 15) as [number, number, number];
    const near = (x: number): string[] =>
      middles(pdfWords(bytes), 1)
        .filter((w) => /^[AB]$/.test(w.text) && w.tall > 3.8 && Math.abs(w.x - x) < 3 && w.y > lettersBelow(bytes))
        .map((w) => w.text);
    expect([near(lineB), near(lineA), near(joining)]).toEqual([['B'], ['A'], ['B']]);
  });

  test('the faces show the outlets where the report has them, the struck-out ones the mirror image', () => {
    const card = pages.findIndex((page) => page.includes('fuel-feed · page ') && page.includes('CLOCK CARD'));
    const words = middles(pdfWords(bytes), card);
    const deg = 112.6;
    const dials = words.filter((w) => w.text === '12' && words.some((v) => isBelow(v, w) && v.text === '6'));
    expect(dials).toHaveLength(2);
    dials.forEach((twelve, i) => {
      const six = words.find((v) => v.text === '6' && isBelow(v, twelve))!;
      const [x, y] = [twelve.x, (twelve.y + six.y) / 2];
      const viewer = i === 0 ? 'A' : 'B';
      const { near, far } = clockFace(deg, viewer);
      for (const hand of [near, far]) {
        const letter = words.find((w) => w.text === hand.end && Math.hypot(w.x - x, w.y - y) < 17)!;
        const seen = radiansToDegrees(Math.atan2(letter.x - x, y - letter.y));
        expect(degreesApart(seen, hand.clockwiseDeg), `END ${hand.end} seen from ${viewer}`).toBeLessThan(3);
      }
    });
    const notThis = words.find((w) => w.text === 'NOT' && w.x > 120)!;
    const box = words.filter((w) => w.x > notThis.x - 32 && w.y > notThis.y + 4 && w.y < notThis.y + 32);
    const [farB, farA] = ['B', 'A'].map((t) => box.filter((w) => w.text === t).sort((v, w) => v.y - w.y)[0]!);
    const [nearA, nearB] = ['A', 'B'].map((t) => box.filter((w) => w.text === t).sort((v, w) => w.y - v.y)[0]!);
    expect(nearA!.x).toBeLessThan(farB!.x - 3);
    expect(nearB!.x).toBeLessThan(farA!.x - 3);
    expect(nearA!.y).toBeGreaterThan(farB!.y + 5);
  });

  test('the straight view is at its stated scale: the cut length dimension is cut length / 3', () => {
    expect(pages[0]).toContain('Scale 1:3.');
    const wanted = COOLER_LAY.cutLengthMm / 3;
    const lines = levelLines(pdfStrokes(bytes, 0));
    expect(lines.filter((mm) => Math.abs(mm - wanted) < ON_PAPER_MM).length).toBeGreaterThan(0);
    const overall = COOLER_LAY.overallLengthMm / 3;
    expect(lines.filter((mm) => Math.abs(mm - overall) < ON_PAPER_MM)).toHaveLength(1);
  });

  test('pages are true A4 or Letter', async () => {
    const [word] = pdfWords(bytes);
    expect(word?.pageWidthMm).toBeCloseTo(210, 2);
    expect(word?.pageHeightMm).toBeCloseTo(297, 2);
    const [letter] = pdfWords(await buildSheetPdf(sampleInput({ paper: 'Letter' })));
    expect(letter?.pageWidthMm).toBeCloseTo(215.9, 2);
    expect(letter?.pageHeightMm).toBeCloseTo(279.4, 2);
  });

  test('no word leaves the margins and no two words lie on each other, even on awkward hoses', async () => {
    const files = [bytes, await buildSheetPdf(sampleInput({ paper: 'Letter' })), await awkwardSheets()];
    for (const file of [...files, await oddEndSheets('A4'), await oddEndSheets('Letter')]) {
      const words = pdfWords(file);
      for (const w of words) {
        expect(w.leftMm, w.text).toBeGreaterThan(9);
        expect(w.rightMm, w.text).toBeLessThan(w.pageWidthMm - 9);
        expect(w.bottomMm, w.text).toBeLessThan(w.pageHeightMm - 4);
      }
      expect(clashes(words)).toEqual([]);
    }
  });
});

test('the same input on the same day gives the same bytes', async () => {
  const [first, second] = [await buildSheetPdf(sampleInput()), await buildSheetPdf(sampleInput())];
  expect(Buffer.compare(first, second)).toBe(0);
  const nextDay = await buildSheetPdf(sampleInput({ printedOn: '2026-03-15' }));
  expect(Buffer.compare(first, nextDay)).not.toBe(0);
});

/** Every length in mm that a sheet of this run may carry, as text, from the report, the parts and the rules. */
function knownLengths(run: SheetRun, lay: typeof COOLER_LAY): string[] {
  const { hose } = run;
  const strip = lay.clock.kind === 'angle' ? wrapStrip(hose.outsideDiameterMm, lay.clock.deg) : undefined;
  const findings = FINDINGS.filter((f) => f.run === lay.run);
  const nearest = [
    lay.overallLengthMm,
    lay.cutOffMm.a,
    lay.cutOffMm.b,
    lay.liveLengthMm,
    lay.tautLengthMm,
    hose.outsideDiameterMm,
    hose.insideDiameterMm,
    hose.minBendRadiusMm,
    ...lengthsOf({ cutLengthMm: lay.cutLengthMm, a: run.a.end, b: run.b.end }).flatMap((length) => [
      length.lengthMm ?? 0,
      Math.abs(length.addedMm?.a ?? 0),
      Math.abs(length.addedMm?.b ?? 0),
    ]),
    run.a.end.shoulderToMouthMm,
    run.b.end.shoulderToMouthMm,
    lay.cutLengthMm - run.b.end.shoulderToMouthMm,
    ...lay.supports.map((s) => s.at.arcLengthMm),
    ...(strip ? [strip.arcMm, strip.circumferenceMm] : []),
    ...findings.flatMap((f) => [f.limit, f.measured, f.margin, f.at?.arcLengthMm ?? f.limit]),
  ];
  const up = [lay.cutLengthMm, lay.cutLengthMm + 6.35, lay.minRadius.limitMm];
  const tolerance = lengthTolerance(lay.cutLengthMm, hose.core).toleranceMm;
  const other = en853Tolerance(lay.overallLengthMm, hose.dash);
  const down = [
    lay.minRadius.radiusMm,
    tolerance,
    cutSquarenessMm(hose.dash)!,
    other.overMm,
    -other.underMm,
    ...findings.flatMap((f) => [f.measured, f.margin]),
  ];
  const words = [lay.reason ?? '', ...findings.map((f) => f.message)].join(' ').match(/\d+\.\d(?= mm)/g) ?? [];
  return [
    ...nearest.map((mm) => formatMm(mm)),
    ...up.map((mm) => formatMm(mm, 'up')),
    ...down.map((mm) => formatMm(mm, 'down')),
  ]
    .map((text) => text.replace(' mm', ''))
    .concat(words);
}

function levelLines(strokes: readonly Stroke[]): number[] {
  return strokes.flatMap(({ points: [a, b, ...more] }) =>
    a && b && more.length === 0 && Math.abs(a[1] - b[1]) < ON_PAPER_MM ? [Math.abs(a[0] - b[0])] : [],
  );
}

/** The middles of the words of a page (from 0), mm on paper. */
function middles(words: readonly Word[], page: number): { text: string; x: number; y: number; tall: number }[] {
  return words
    .filter((w) => w.page === page)
    .map((w) => ({
      text: w.text,
      x: (w.leftMm + w.rightMm) / 2,
      y: (w.topMm + w.bottomMm) / 2,
      tall: w.bottomMm - w.topMm,
    }));
}

/** Does one word stand under the other as 6 under 12 on a face of 17 mm? */
function isBelow(six: { x: number; y: number }, twelve: { x: number; y: number }): boolean {
  return Math.abs(six.x - twelve.x) < 0.5 && Math.abs(six.y - twelve.y - 39.2) < 1;
}

/** mm from the top of the second page below which the faces end and the strip begins. */
function lettersBelow(bytes: Uint8Array): number {
  return middles(pdfWords(bytes), 1).find((w) => w.text === 'near')!.y + 1;
}

/** x of the upright strokes of a height, left to right. */
function uprightLines(strokes: readonly Stroke[], heightMm: number): number[] {
  return strokes
    .flatMap(({ points: [a, b, ...more] }) => {
      const upright = a && b && more.length === 0 && Math.abs(a[0] - b[0]) < ON_PAPER_MM;
      return upright && Math.abs(Math.abs(a[1] - b[1]) - heightMm) < ON_PAPER_MM ? [a[0]] : [];
    })
    .sort((x, y) => x - y);
}

/** Pairs of words whose boxes share more than a sliver; boxes are a type's full height, so close lines touch a little. */
function clashes(words: ReturnType<typeof pdfWords>): string[] {
  const found: string[] = [];
  words.forEach((v, i) => {
    for (const w of words.slice(i + 1)) {
      if (v.page !== w.page) continue;
      const wide = Math.min(v.rightMm, w.rightMm) - Math.max(v.leftMm, w.leftMm);
      const tall = Math.min(v.bottomMm, w.bottomMm) - Math.max(v.topMm, w.topMm);
      const height = Math.min(v.bottomMm - v.topMm, w.bottomMm - w.topMm);
      if (wide > 0.2 && tall > 0.4 * height) found.push(`page ${v.page + 1}: ${v.text} / ${w.text}`);
    }
  });
  return found;
}

/** Hoses that strain the layout: thick, long, many clamps, long names, many findings, clocks near 0 and 180. */
async function awkwardSheets(): Promise<Uint8Array> {
  const thick: SheetRun = {
    ...COOLER_RUN,
    hose: { ...COOLER_RUN.hose, outsideDiameterMm: 63, dash: 32 },
    a: { ...COOLER_RUN.a, end: { ...COOLER_RUN.a.end, bendAngleDeg: 135, collarDiameterMm: 75 } },
  };
  const long: SheetRun = {
    ...FUEL_RUN,
    run: {
      ...FUEL_RUN.run,
      id: 'a-very-long-run-identity-that-goes-on-and-on',
      name: 'A name that is really much too long for any heading on any sheet of paper in a workshop',
    },
  };
  const supports = Array.from({ length: 9 }, (_, i) => ({
    ...COOLER_LAY.supports[0]!,
    id: `c-${i}`,
    proposed: i % 2 === 0,
    at: { arcLengthMm: 150 + i * (i < 5 ? 30 : 220), point: [0, 0, 0] as [number, number, number] },
  }));
  const lays = [
    { ...sampleLay(thick, 2160, 0.05, { kind: 'angle', deg: 318.25, toleranceDeg: 5 }), supports },
    sampleLay(long, 700, 0.05, { kind: 'angle', deg: 4, toleranceDeg: 5 }),
  ];
  const findings = Array.from({ length: 14 }, (_, i) => ({ ...FINDINGS[i % 2]!, run: 'cooler-feed' }));
  const project = { name: 'X', exampleData: false };
  return buildSheetPdf(sampleInput({ runs: [thick, long], report: { ...REPORT, lays, findings }, project }));
}

/** Ends of every form and bend, fixed and free, with all that their tables may say, in the longest words. */
async function oddEndSheets(paper: 'A4' | 'Letter'): Promise<Uint8Array> {
  const end = COOLER_RUN.a.end;
  const crimped = { crimpDie: '24', crimpSetting: '3.75', crimpFromMm: 24.75, crimpToMm: 25.05, expander: true };
  const fixed = { ...end, ...crimped, turning: 'fixed' as const };
  const pairs: [End, End][] = [
    [
      { ...fixed, form: 'banjo' },
      { ...fixed, form: 'male', bendAngleDeg: 60, tubeBendRadiusMm: 20 },
    ],
    [
      { ...end, bendAngleDeg: 180, dropMm: 44, tubeBendRadiusMm: 20, bendToShoulderMm: 15 },
      { ...fixed, bendAngleDeg: 150 },
    ],
    [{ ...DRAIN_RUN.a.end, nutReachMm: 3 }, DRAIN_RUN.a.end],
    [
      { ...fixed, form: 'flange', bendAngleDeg: 45 },
      { ...fixed, form: 'barb', bendAngleDeg: 30 },
    ],
    [
      { ...DRAIN_RUN.a.end, form: 'male' },
      { ...end, form: 'banjo', bendAngleDeg: 0 },
    ],
  ];
  const runs = pairs.map(([a, b], i): SheetRun => {
    const { run } = FUEL_RUN;
    return { ...FUEL_RUN, run: { ...run, id: `odd-${i}` }, a: { ...FUEL_RUN.a, end: a }, b: { ...FUEL_RUN.b, end: b } };
  });
  const lays = runs.map((run) => {
    const free = run.a.end.bendAngleDeg === 0 || run.b.end.bendAngleDeg === 0;
    const clock = free
      ? ({ kind: 'free', reason: 'a-straight' } as const)
      : ({ kind: 'angle', deg: 247.4, toleranceDeg: 10 } as const);
    return sampleLay(run, 1640, 0.06, clock);
  });
  const paperwork = { clockDialect: 'far-at-twelve', finestInch: 32 } as const;
  const project = { name: 'Odd ends', exampleData: true, paperwork };
  return buildSheetPdf(sampleInput({ runs, report: { ...REPORT, lays, findings: [] }, project, paper }));
}
