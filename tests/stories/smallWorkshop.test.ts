import { beforeAll, describe, expect, test } from 'vitest';
import type { LayReport } from '../../shared/document/lay/schema.ts';
import type { Roll } from '../../shared/document/parts/schema.ts';
import type { AsBuilt, Support } from '../../shared/document/project/schema.ts';
import { crimpVerdict } from '../../shared/document/proof/crimpVerdict.ts';
import { proofChoices, proofTest } from '../../shared/document/proof/proofTest.ts';
import { withMeasured } from '../../shared/document/proof/reclocked.ts';
import { bestFitDecreasing } from '../../shared/document/stock/cutPlan.ts';
import { hoseTag } from '../../shared/document/tag/hoseTag.ts';
import { readProject } from '../../shared/jobs/readProject.ts';
import { cutVerdict } from '../../shared/sheets/bench/cutVerdict.ts';
import { stockCuts } from '../../shared/sheets/index.ts';
import { runChecks } from '../../shared/solve/checks/index.ts';
import { exampleEnd, exampleHose } from '../arbitraries/rig.ts';
import { aboveNote, layStory, type Story, storyFiles } from './storyBay.ts';

const CUTS_MM = [812, 655, 640, 530, 488, 460, 372];
const END = { dash: 4, shoulderToMouthMm: 15, collarDiameterMm: 13, seatToBendMm: 0, bendToShoulderMm: 20 } as const;
const MOUTH_MM = END.bendToShoulderMm + END.shoulderToMouthMm;
const RADIUS_MM = 43.5;
const APART_MM = 120;

const TAIL_MM = 14;

/**
 * As far along as down. Drawn taut the hose goes two diameters straight, an eighth of a turn, straight down the diagonal, an eighth of a turn
 * and two diameters straight; that is what is left of the cut length over 6 % of slack.
 */
function reachMm(cutMm: number): number {
  const tautMm = (cutMm - 2 * END.shoulderToMouthMm) / 1.06;
  const diagonalMm = tautMm - 2 * TAIL_MM - (Math.PI / 2) * RADIUS_MM;
  return diagonalMm / Math.SQRT2 + RADIUS_MM + TAIL_MM + MOUTH_MM;
}

/** Halfway a long hose is held: over 24 in a clamp is due. */
function clamps(cutMm: number, y: number): Support[] {
  if (cutMm < 640) return [];
  const half = reachMm(cutMm) / 2;
  // The diagonal does not go through the middle between the ports: mouth, tail and bend take it outwards.
  const out = (MOUTH_MM + TAIL_MM + (Math.SQRT2 - 1) * RADIUS_MM) / 2;
  return [{ id: 'middle', kind: 'clamp', point: [half + out, y, out - half], axis: [1, 0, -1] }];
}

/** Seven hoses side by side, each already cut. movedMm: how far up the ports A of the second and third are moved. */
function story(movedMm = 0): Story {
  const at = CUTS_MM.map((cutMm, i) => ({ cutMm, n: i + 1, y: i * APART_MM, reach: reachMm(cutMm) }));
  return {
    blocks: [{ name: 'bench', min: [-200, -100, -700], max: [-60, 7 * APART_MM, 100] }],
    hoses: [
      exampleHose({
        id: 'hose-4',
        dash: 4,
        insideDiameterMm: 4.8,
        outsideDiameterMm: 7,
        minBendRadiusMm: RADIUS_MM - 3.5,
        maxPressureKpa: 3500,
      }),
    ],
    ends: [exampleEnd(0, { ...END, id: 'straight', maxPressureKpa: 7000, crimpFromMm: 24.75, crimpToMm: 25.05 })],
    project: {
      ports: at.flatMap(({ n, y, reach }) => [
        {
          id: `a-${n}`,
          name: `A ${n}`,
          seatPoint: [0, y, n === 2 || n === 3 ? movedMm : 0],
          axis: [1, 0, 0],
          up: [0, 0, 1],
          seat: 'flare-37',
          dash: 4,
        },
        {
          id: `b-${n}`,
          name: `B ${n}`,
          seatPoint: [reach, y, -reach],
          axis: [0, 0, 1],
          up: [1, 0, 0],
          seat: 'flare-37',
          dash: 4,
        },
      ]),
      runs: at.map(({ n, cutMm, y }) => ({
        id: `hose-${n}`,
        name: `Hose ${n}`,
        a: { port: `a-${n}`, end: 'straight' },
        b: { port: `b-${n}`, end: 'straight' },
        service: { purpose: 'oil-pressure', fluid: 'engine-oil', pressureKpa: 500, temperatureC: 90 },
        hose: 'hose-4',
        slack: 0.05,
        cutLengthMm: cutMm,
        supports: clamps(cutMm, y),
      })),
    },
  };
}

const piece = (id: string, lengthMm: number, more: Partial<Roll> = {}): Roll => ({
  id,
  hose: 'hose-4',
  lengthMm,
  provenance: 'example',
  source: 'invented',
  ...more,
});
const SHELF = [piece('roll', 3000), piece('offcut', 1500, { offcut: true })];

function readStory(of: Story) {
  const read = readProject(storyFiles(of));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

describe('seven hoses of a small workshop', () => {
  let report: LayReport;
  beforeAll(async () => {
    report = await layStory(story());
  }, 120_000);

  test('lie clean as they are cut', () => {
    expect(report.lays.map(({ cutLengthMm }) => Math.round(cutLengthMm))).toEqual(CUTS_MM);
    expect(aboveNote(report)).toEqual([]);
  });

  test('are cut from an offcut and a roll: by hand 27 and 495 mm are left, looked through 4 and 518', () => {
    const { resolved, runHashes } = readStory(story());
    const { hoses, leftOut } = stockCuts({ report, runs: resolved.runs, currentRunHashes: runHashes }, SHELF);
    expect(leftOut).toEqual([]);
    const [only] = hoses;
    expect(only?.plan.pieces.map(({ piece: { id }, leftMm }) => [id, Math.round(leftMm)])).toEqual([
      ['offcut', 4],
      ['roll', 518],
    ]);
    const wanted = only?.plan.pieces.flatMap(({ cuts }) => cuts) ?? [];
    const byHand = bestFitDecreasing(wanted, SHELF, 3);
    expect(byHand.pieces.map(({ cuts, leftMm }) => [cuts.length, Math.round(leftMm)])).toEqual([
      [2, 27],
      [5, 495],
    ]);
  });

  test('a crimp of 25.17 and 25.12 mm against 24.90 +/- 0.15 fails; 24.90 does not', () => {
    const [run] = readStory(story()).resolved.runs;
    if (run === undefined) throw new Error('no run');
    expect(crimpVerdict(run.a.end, [25.17, 25.12]).outcome).toBe('outside');
    expect(crimpVerdict(run.a.end, [24.9, 24.9]).outcome).toBe('within');
  });

  test('35 bar of the weakest part: 52.5 bar for a minute, or as rubber 70 bar for half a minute to a minute', () => {
    const [run] = readStory(story()).resolved.runs;
    if (run === undefined) throw new Error('no run');
    expect(proofTest(run)).toMatchObject({ pressureKpa: 5250, holdFromS: 60, holdToS: 60 });
    const rubber = { ...run, hose: { ...run.hose, core: 'nbr' as const } };
    expect(proofTest(rubber)).toMatchObject({ pressureKpa: 7000, holdFromS: 30, holdToS: 60 });
  });

  test('two ports moved by 8 mm: the two hoses on them are stale and not cut, the others stand', () => {
    const { runHashes } = readStory(story(8));
    const stale = report.lays
      .map(({ run }) => run)
      .filter((run) => !cutVerdict({ report, currentRunHashes: runHashes }, run).mayCut);
    expect(stale).toEqual(['hose-2', 'hose-3']);
    expect(cutVerdict({ report, currentRunHashes: runHashes }, 'hose-2').reasons[0]).toContain('Stale');
  });

  test('either test may be chosen; the usual one of its kind comes first', () => {
    const [run] = readStory(story()).resolved.runs;
    if (run === undefined) throw new Error('no run');
    expect(proofChoices(run).map(({ multiple, pressureKpa }) => [multiple, pressureKpa])).toEqual([
      [1.5, 5250],
      [2, 7000],
    ]);
  });

  test('each has its tag, with the port of either end', () => {
    const { runs } = readStory(story()).resolved;
    expect(runs).toHaveLength(7);
    for (const [i, run] of runs.entries()) {
      const of = (wanted: string) => hoseTag(run).find(({ label }) => label === wanted)?.value;
      expect([of('END A'), of('END B')]).toEqual([`a-${i + 1}`, `b-${i + 1}`]);
      expect(of('Proof')).toBeUndefined();
    }
  });

  test('after its proof test a hose is not clocked again', () => {
    const proved = withMeasured({ clockDeg: 268 }, { proof: { on: '2026-05-12', pressureKpa: 5250, holdS: 60 } });
    if ('refused' in proved) throw new Error(proved.refused);
    expect(proved.built.proof?.clockDeg).toBe(268);
    expect(withMeasured(proved.built, { clockDeg: 271 })).toEqual({ refused: expect.stringContaining('2026-05-12') });
    expect(withMeasured(proved.built, { fittedOn: '2026-06-01' })).toHaveProperty('built');
  });

  test('a crimp outside forbids the hose, which is not tested', async () => {
    const told = await checkedWith({ crimpMm: { b: [25.17, 25.12] } });
    expect(told.find(({ check }) => check === 'crimp')).toMatchObject({ run: 'hose-1', severity: 'stop' });
    expect((await checkedWith({ crimpMm: { b: [24.9, 24.95] } })).filter(({ check }) => check === 'crimp')).toEqual([]);
  });

  test('twelve months after it was fitted it is looked over, with hand or mirror at its places; what is found stays open until closed', async () => {
    const due = await checkedWith({ fittedOn: '2026-06-01' }, '2027-06-02');
    const look = due.find(({ check }) => check === 'inspection');
    expect(look?.message).toMatch(/hand|mirror/);
    expect((await checkedWith({ fittedOn: '2026-06-01' }, '2027-06-01')).map(({ check }) => check)).not.toContain(
      'inspection',
    );
    const seen = { on: '2027-06-01', found: 'the braid is frayed at the clamp', photo: 'photos/hose-1.jpg' };
    const open = { fittedOn: '2026-06-01', inspections: [seen] };
    expect((await checkedWith(open, '2027-06-02')).find(({ check }) => check === 'inspection')?.message).toContain(
      'frayed',
    );
    const closed = { ...open, inspections: [{ ...seen, closedOn: '2027-06-03' }] };
    expect((await checkedWith(closed, '2027-06-04')).map(({ check }) => check)).not.toContain('inspection');
  });

  /** What is told of the first hose with what the bench wrote down of it, on a day. */
  async function checkedWith(asBuilt: AsBuilt, today?: string) {
    const told = story();
    const runs = (told.project.runs ?? []).map((run, i) => (i === 0 ? { ...run, asBuilt } : run));
    const { resolved } = readStory({ ...told, project: { ...told.project, runs } });
    return runChecks(resolved, report.lays, today).filter(({ run }) => run === 'hose-1');
  }
});
