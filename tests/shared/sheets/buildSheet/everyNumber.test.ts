import { beforeAll, describe, expect, test } from 'vitest';
import { readProjectFiles } from '../../../../electron/node/readProjectFiles.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import { ballMm } from '../../../../shared/document/assembly/ballTest.ts';
import { jointGap } from '../../../../shared/document/assembly/jointGap.ts';
import type { BuiltPose, Finding, Lay } from '../../../../shared/document/lay/schema.ts';
import { proofTest } from '../../../../shared/document/proof/proofTest.ts';
import { cutSquarenessMm, en853Tolerance, lengthTolerance } from '../../../../shared/document/rules/lengthTolerance.ts';
import { readProject } from '../../../../shared/jobs/readProject.ts';
import { newJobMemory, runJob } from '../../../../shared/jobs/runJob.ts';
import { buildSheetPdf, type SheetInput, type SheetRun } from '../../../../shared/sheets/index.ts';
import { sheetFonts } from '../../../arbitraries/reports.ts';
import { type Printed, printedNumbers, strangers } from '../printedNumbers.ts';
import { canReadPdf, pdfLines, pdfPages, pdfStrokes, WHY_SKIPPED } from '../readPdf.ts';

/** A bay with the runs of it that are laid here: all kinds of ends, a sleeve, a banjo, a near miss, a straight end. */
const BAYS = [
  ['two-elbow-rig', ['two-elbow']],
  ['hillclimb', ['turbo-oil-feed', 'fuel-feed', 'cooler-feed']],
] as const;

interface Laid {
  readonly input: SheetInput;
  readonly bytes: Uint8Array;
}

/** mm. Reading a coordinate back costs two roundings of a few microns. */
const ON_PAPER_MM = 0.02;

describe.skipIf(!canReadPdf)(`every number of laid hoses (${canReadPdf ? 'with poppler' : WHY_SKIPPED})`, () => {
  const laid = new Map<string, Laid>();

  beforeAll(async () => {
    for (const [bay, runs] of BAYS) laid.set(bay, await layAndPrint(bay, runs));
  }, 120_000);

  test.each(BAYS)('%s: what is printed is what is stored, within its rounding, and nothing else', (bay, runs) => {
    const { input, bytes } = laid.get(bay)!;
    const pages = pdfPages(bytes);
    for (const id of runs) {
      const text = pages.filter((page) => page.includes(`${id} · page `)).join(' ');
      const printed = printedNumbers(text);
      expect(printed.length, id).toBeGreaterThan(60);
      expect(words(strangers(printed, storedNumbers(input, id))), id).toEqual([]);
    }
  });

  test.each(BAYS)('%s: a stored length that differs by more than its rounding is found out', (bay, runs) => {
    const { input, bytes } = laid.get(bay)!;
    const pages = pdfPages(bytes);
    const lays = input.report.lays.map(
      (lay): Lay => ({
        ...lay,
        overallLengthMm: lay.overallLengthMm + 0.31,
        lengths: lay.lengths!.map((length) => ({ ...length, lengthMm: (length.lengthMm ?? 0) + 0.31 })),
        clock: lay.clock.kind === 'angle' ? { ...lay.clock, deg: lay.clock.deg + 6.3 } : lay.clock,
      }),
    );
    const other = { ...input, report: { ...input.report, lays } };
    for (const id of runs) {
      const text = pages.filter((page) => page.includes(`${id} · page `)).join(' ');
      const found = strangers(printedNumbers(text), storedNumbers(other, id));
      const { overallLengthMm, clock } = input.report.lays.find(({ run }) => run === id)!;
      expect(found.some(({ unit, value }) => unit === 'mm' && Math.abs(value - overallLengthMm) < 0.1 + 1e-6)).toBe(
        true,
      );
      if (clock.kind === 'angle')
        expect(found.some(({ unit, value }) => unit === 'deg' && Math.abs(value - clock.deg) < 0.06)).toBe(true);
    }
  });

  test.each(BAYS)('%s: each number stands by its own name', (bay, runs) => {
    const { input, bytes } = laid.get(bay)!;
    const lines = pdfLines(bytes);
    const pages = pdfPages(bytes);
    for (const id of runs) {
      const lay = input.report.lays.find((one) => one.run === id)!;
      const { clock } = lay;
      const text = pages.filter((page) => page.includes(`${id} · page `)).join(' ');
      const told = /CLOCK (\d+(?:\.\d+)?)°/.exec(text);
      const tolerance = /Tolerance ± (\d+)°/.exec(text);
      if (clock.kind === 'free') expect(told).toBeNull();
      else {
        expect(Math.abs(Number(told![1]) - clock.deg)).toBeLessThan(0.05 + 1e-6);
        expect(Number(tolerance![1])).toBe(clock.toleranceDeg);
      }
      for (const [name, storedMm] of [
        ['cut', lay.cutLengthMm],
        ['overall', lay.overallLengthMm],
        ['Overall', lay.overallLengthMm],
        ['C of END A', lay.cutOffMm.a],
        ['C of END B', lay.cutOffMm.b],
        ['mouth B: hose in to here', mouthB(input, lay)],
      ] as const) {
        const values = lines.flatMap((line) => [...line.matchAll(new RegExp(`${name} (-?\\d+\\.\\d) mm`, 'g'))]);
        const near = values.some(([, mm]) => Math.abs(Number(mm) - storedMm) < 0.1 + 1e-6);
        expect(near, `${id}: ${name} ${storedMm}`).toBe(true);
      }
    }
  });

  test.each(BAYS)('%s: every named length of the report is printed with its own words', (bay, runs) => {
    const { input, bytes } = laid.get(bay)!;
    const text = pdfPages(bytes).join(' ');
    for (const lay of input.report.lays.filter(({ run }) => (runs as readonly string[]).includes(run)))
      for (const length of lay.lengths!) {
        const told = `${length.from.charAt(0).toUpperCase()}${length.from.slice(1)} to ${length.to}.`;
        expect(text, told).toContain(told);
        for (const figure of length.missing ?? []) expect(text).toContain(figure);
      }
  });

  test.each(BAYS)('%s: the lines of every wrap strip stand the stored clock apart, at 1:1', (bay, runs) => {
    const { input, bytes } = laid.get(bay)!;
    const pages = pdfPages(bytes);
    const clocked = runs.flatMap((id) => {
      const { clock } = input.report.lays.find(({ run }) => run === id)!;
      return clock.kind === 'angle' ? [{ id, deg: clock.deg }] : [];
    });
    expect(clocked.length).toBeGreaterThan(0);
    for (const { id, deg } of clocked) {
      const page = pages.findIndex((text) => text.includes(`${id} · page `) && text.includes('Wrap strip'));
      const { hose } = input.runs.find(({ run }) => run.id === id)!;
      const round = Math.PI * hose.outsideDiameterMm;
      const upright = uprightLines(bytes, page, 15);
      const fromB = upright.map((x) => x - upright[0]!);
      expect(fromB, id).toHaveLength(3);
      expect(Math.abs(fromB[1]! - (round * deg) / 360), id).toBeLessThan(ON_PAPER_MM);
      expect(Math.abs(fromB[2]! - round), id).toBeLessThan(ON_PAPER_MM);
    }
  });

  test.each(BAYS)('%s: cut and overall are drawn to the printed scale', (bay, runs) => {
    const { input, bytes } = laid.get(bay)!;
    const pages = pdfPages(bytes);
    for (const id of runs) {
      const page = pages.findIndex((text) => text.includes(`${id} · page `) && text.includes('Scale 1:'));
      const divisor = Number(/Scale 1:(\d+(?:\.5)?)/.exec(pages[page]!)![1]);
      const lay = input.report.lays.find(({ run }) => run === id)!;
      const level = levelLines(bytes, page);
      for (const mm of [lay.cutLengthMm, lay.overallLengthMm])
        expect(
          level.some((drawn) => Math.abs(drawn - mm / divisor) < ON_PAPER_MM),
          `${id}: ${mm}`,
        ).toBe(true);
    }
  });
});

async function layAndPrint(bay: string, runs: readonly string[]): Promise<Laid> {
  const read = await readProjectFiles(`models/bays/${bay}`);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const project = { projectText: read.value.projectText, files: read.value.files };
  const done = await runJob('layRuns', { ...project, runs }, UNWATCHED, newJobMemory());
  const parsed = readProject(project);
  if (done.kind !== 'done' || !parsed.ok) throw new Error(`${bay} was not laid`);
  const { resolved } = parsed.value;
  const input: SheetInput = {
    project: resolved.project,
    report: done.output,
    runs: resolved.runs,
    fonts: sheetFonts(),
    printedOn: '2026-03-14',
  };
  return { input, bytes: await buildSheetPdf(input, runs) };
}

type Stored = Record<'mm' | 'deg' | 'ratio' | 'kPa' | 'C', number[]>;

/** Every number that a sheet of this run may carry: from the lay, its findings, the parts, the service and the rules. */
function storedNumbers(input: SheetInput, id: string): Stored {
  const lay = input.report.lays.find(({ run }) => run === id)!;
  const run = input.runs.find((one) => one.run.id === id)!;
  const findings = input.report.findings.filter((finding) => finding.run === id);
  const said = numbersSaid(
    [lay.reason ?? '', ...madeOf(lay).map(({ name }) => name), ...findings.flatMap(wordsOf), ...sourcesOf(run)].join(
      ' ',
    ),
  );
  const own: Stored = {
    mm: [
      ...lengthsOfLay(lay, run, input),
      ...ofUnit(findings, 'mm'),
      ...findings.flatMap(placeOf),
      CHECK_BAR_MM,
      101.6,
    ],
    deg: [...anglesOf(lay, run), ...ofUnit(findings, 'deg')],
    ratio: [lay.slack, ...ofUnit(findings, 'ratio'), 1],
    kPa: [run.hose.maxPressureKpa, run.run.service.pressureKpa, ...proofOf(run), ...ofUnit(findings, 'kPa')],
    C: [run.hose.maxTemperatureC, run.run.service.temperatureC, ...ofUnit(findings, 'deg C')],
  };
  return merged(own, said);
}

/** The proof and what it is a multiple of. */
function proofOf(run: SheetRun): number[] {
  const { pressureKpa, weakest, burstKpa } = proofTest(run);
  return [pressureKpa, weakest.maxPressureKpa, ...(burstKpa === undefined ? [] : [burstKpa])];
}

const CHECK_BAR_MM = 100;

function lengthsOfLay(lay: Lay, { hose, a, b }: SheetRun, input: SheetInput): number[] {
  const other = en853Tolerance(lay.overallLengthMm, hose.dash);
  const { deg } = lay.clock.kind === 'angle' ? lay.clock : { deg: 0 };
  const roundMm = Math.PI * hose.outsideDiameterMm;
  return [
    lay.cutLengthMm,
    lay.overallLengthMm,
    lay.liveLengthMm,
    lay.tautLengthMm,
    lay.cutOffMm.a,
    lay.cutOffMm.b,
    ...(lay.lengths ?? []).flatMap(({ lengthMm, addedMm }) => [lengthMm ?? 0, addedMm?.a ?? 0, addedMm?.b ?? 0]),
    ...(lay.lengths ?? []).flatMap(({ addedMm }) => [-(addedMm?.a ?? 0), -(addedMm?.b ?? 0)]),
    ...(lay.sleeve === undefined
      ? []
      : [lay.sleeve.cutLengthMm, lay.sleeve.stiffMm, lay.sleeve.allowanceMm, lay.sleeve.reachMm]),
    lay.minRadius.radiusMm,
    lay.minRadius.limitMm,
    ...madeOf(lay).flatMap((p) => [
      Math.abs(p.slackLeftMm),
      p.minRadius?.provenAtLeastMm ?? 0,
      p.tightest?.clearanceMm ?? 0,
    ]),
    ...lay.supports.map(({ at }) => at.arcLengthMm),
    hose.outsideDiameterMm,
    hose.insideDiameterMm,
    hose.minBendRadiusMm,
    a.end.shoulderToMouthMm,
    b.end.shoulderToMouthMm,
    mouthB(input, lay),
    lengthTolerance(lay.cutLengthMm, hose.core).toleranceMm,
    cutSquarenessMm(hose.dash) ?? 0,
    other.overMm,
    -other.underMm,
    roundMm,
    (roundMm * deg) / 360,
    ...finishedOf({ hose, a, b }),
  ];
}

/** What is published of its finished joints and of the ball through its bore. */
function finishedOf({ hose, a, b }: Pick<SheetRun, 'hose' | 'a' | 'b'>): number[] {
  const { crimpFromMm = 0, crimpToMm = 0 } = a.end;
  const figures = [jointGap(a.end, hose.core)?.gapMm, jointGap(b.end, hose.core)?.gapMm, ballMm(hose.dash)];
  const crimps = [crimpFromMm, crimpToMm, b.end.crimpFromMm, b.end.crimpToMm];
  return [...figures, ...crimps].filter((mm) => mm !== undefined);
}

/** The hose made otherwise than planned, as the sheet tells of it. */
function madeOf({ tolerance, built }: Pick<Lay, 'tolerance' | 'built'>): BuiltPose[] {
  return [...(tolerance?.poses ?? []), ...(built === undefined ? [] : [built])];
}

function anglesOf({ clock, ends, sleeve, liveLengthMm, ...lay }: Lay, { a, b }: SheetRun): number[] {
  const twists = madeOf(lay).map((p) => Math.abs(p.twistDeg ?? 0));
  const own = [
    ...twists,
    ends.a.ownClockDeg,
    ends.b.ownClockDeg,
    a.end.bendAngleDeg,
    b.end.bendAngleDeg,
    sleeve?.turnedDeg ?? 0,
  ];
  if (clock.kind === 'free') return own;
  const { deg, toleranceDeg } = clock;
  const off = Math.abs(360 - 2 * deg);
  return [
    ...own,
    deg,
    toleranceDeg,
    (toleranceDeg * 1000) / liveLengthMm,
    360 - deg,
    Math.min(off, 360 - off),
    Math.round(deg / 5) * 5,
    Math.abs(Math.round(deg / 5) * 5 - deg),
  ];
}

function mouthB(input: SheetInput, lay: Lay): number {
  return lay.cutLengthMm - input.runs.find(({ run }) => run.id === lay.run)!.b.end.shoulderToMouthMm;
}

function ofUnit(findings: readonly Finding[], unit: string): number[] {
  return findings.filter((f) => f.unit === unit).flatMap(({ limit, measured, margin }) => [limit, measured, margin]);
}

function placeOf({ at }: Finding): number[] {
  return at === undefined ? [] : [at.arcLengthMm];
}

function wordsOf({ message, mend = '', source, dissent = '', overrideReason = '' }: Finding): string[] {
  return [message, mend, source, dissent, overrideReason];
}

function sourcesOf({ hose, sleeve, a, b }: SheetRun): string[] {
  return [hose, ...(sleeve === undefined ? [] : [sleeve]), a.end, b.end].flatMap(({ name, source }) => [name, source]);
}

/** What stands as a number in a sentence of the report: it is printed as it is there. */
function numbersSaid(text: string): Stored {
  const said = printedNumbers(text);
  const of = (unit: Printed['unit'], factor = 1): number[] =>
    said.filter((one) => one.unit === unit).map(({ value }) => value * factor);
  const decimalInches = [...text.matchAll(/(-?\d+\.\d+) in\b/g)].map(([, inches]) => Number(inches) * 25.4);
  return {
    mm: [...of('mm'), ...of('in', 25.4), ...decimalInches],
    deg: of('deg'),
    ratio: of('percent', 0.01),
    kPa: [...of('kPa'), ...of('psi', 6.894757293)],
    C: [...of('C'), ...of('F').map((f) => ((f - 32) * 5) / 9)],
  };
}

function merged(one: Stored, other: Stored): Stored {
  return {
    mm: [...one.mm, ...other.mm],
    deg: [...one.deg, ...other.deg],
    ratio: [...one.ratio, ...other.ratio],
    kPa: [...one.kPa, ...other.kPa],
    C: [...one.C, ...other.C],
  };
}

function words(found: readonly Printed[]): string[] {
  return found.map(({ text }) => text);
}

function uprightLines(bytes: Uint8Array, page: number, heightMm: number): number[] {
  return pdfStrokes(bytes, page)
    .flatMap(({ points: [a, b, ...more] }) => {
      const upright = a && b && more.length === 0 && Math.abs(a[0] - b[0]) < ON_PAPER_MM;
      return upright && Math.abs(Math.abs(a[1] - b[1]) - heightMm) < ON_PAPER_MM ? [a[0]] : [];
    })
    .sort((x, y) => x - y);
}

function levelLines(bytes: Uint8Array, page: number): number[] {
  return pdfStrokes(bytes, page).flatMap(({ points: [a, b, ...more] }) =>
    a && b && more.length === 0 && Math.abs(a[1] - b[1]) < ON_PAPER_MM ? [Math.abs(a[0] - b[0])] : [],
  );
}
