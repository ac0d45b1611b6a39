import { describe, expect, it } from 'vitest';
import { UNWATCHED, type Watch } from '../../../shared/base/watch.ts';
import type { Finding, LayReport } from '../../../shared/document/lay/schema.ts';
import { applyMend } from '../../../shared/document/mends/applyMend.ts';
import { type MendAnswer, Mends } from '../../../shared/document/mends/schema.ts';
import { takenMend } from '../../../shared/document/mends/takenMend.ts';
import { parseProject } from '../../../shared/document/project/parseProject.ts';
import { serialiseProject } from '../../../shared/document/project/serialiseProject.ts';
import type { ProjectFiles } from '../../../shared/jobs/contract.ts';
import { newJobMemory, runJob } from '../../../shared/jobs/runJob.ts';
import { type Story, storyFiles } from '../../stories/storyBay.ts';
import { dawdlers } from './dawdlers.ts';
import {
  CARRIED_NEAR,
  CHARGED_BY_A_PANEL,
  CHARGING,
  CLAMPED_TOGETHER,
  COOKED,
  HOT_SUCTION,
  LEANING,
  LOOSE,
  PULLED,
  SAWING,
  STARVED,
  STILL_STARVED,
  TIGHT,
  UNDER_HEAT,
} from './mendRigs.ts';

async function output<T>(end: Promise<{ kind: string; output?: T }>): Promise<T> {
  const done = await end;
  if (done.kind !== 'done') throw new Error(JSON.stringify(done));
  return done.output as T;
}

async function mendsOf(story: Story, checks?: readonly string[]) {
  const files = storyFiles(story);
  const report: LayReport = await output(runJob('layRuns', files, UNWATCHED, newJobMemory()));
  const input = { ...files, run: 'line', report, ...(checks === undefined ? {} : { checks }) };
  const mends: Mends = await output(runJob('tryMends', input, UNWATCHED, newJobMemory()));
  return { files, report, mends };
}

function mendedFiles(files: ProjectFiles, { mend }: MendAnswer): ProjectFiles {
  const parsed = parseProject(files.projectText);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  return { ...files, projectText: serialiseProject(applyMend(parsed.value, mend)) };
}

/** What a change brings, told without the code under test: a grave finding that was not there, or not as grave. */
function brought(before: readonly Finding[], after: readonly Finding[]): string[] {
  const weight = { note: 0, look: 1, stop: 2 };
  return after
    .filter((f) => f.severity !== 'note')
    .filter(
      (f) => !before.some((b) => b.check === f.check && b.rule === f.rule && weight[b.severity] >= weight[f.severity]),
    )
    .map((f) => `${f.severity} ${f.check}: ${f.message}`);
}

/** Makes each answer in the project, lays that as the window would, and holds the promise against it. */
async function keepsItsWord(story: Story, checks?: readonly string[]) {
  const { files, report, mends } = await mendsOf(story, checks);
  expect(Mends.safeParse(JSON.parse(JSON.stringify(mends))).error?.issues).toBeUndefined();
  for (const answer of mends.answers) {
    const mended = mendedFiles(files, answer);
    const laid: LayReport =
      answer.how === 'near'
        ? await output(runJob('relayRun', { ...mended, run: 'line', earlier: report }, UNWATCHED, newJobMemory()))
        : await output(runJob('layRuns', { ...mended, runs: ['line'], earlier: report }, UNWATCHED, newJobMemory()));
    const [lay] = laid.lays;
    expect(lay?.cutLengthMm).toBeCloseTo(answer.lay.cutLengthMm, 6);
    expect(lay?.inputHash).toBe(answer.lay.inputHash);
    expect(laid.findings).toEqual(answer.findings);
    const told = (answer.brings ?? []).map((f) => `${f.severity} ${f.check}: ${f.message}`);
    expect(brought(report.findings, laid.findings).filter((one) => !told.includes(one))).toEqual([]);
    expect((answer.brings ?? []).filter((f) => f.severity === 'stop')).toEqual([]);
    for (const { finding, left } of answer.cured)
      if (left === undefined)
        expect(
          laid.findings.filter((f) => f.check === finding.check && f.rule === finding.rule && f.severity !== 'note'),
        ).toEqual([]);
    const taken: LayReport = await output(
      runJob('checkLays', { ...mended, report: takenMend(report, answer) }, UNWATCHED, newJobMemory()),
    );
    expect(taken.findings).toEqual(answer.findings);
  }
  return mends;
}

const edits = ({ answers }: Mends) => answers.map(({ mend }) => mend.edit);

describe('mends, tried by laying them', () => {
  it('have a hose that was cut too short cut anew', async () => {
    const mends = await keepsItsWord(TIGHT);
    expect(mends.aimedAt.map((f) => f.check)).toContain('slack');
    const [best] = mends.answers;
    expect(best?.mend.edit).toEqual({ kind: 'new-hose' });
    // 330 mm taut and 30 mm in the sockets, with the 6 % that the run asks for.
    expect(best?.lay.cutLengthMm).toBeCloseTo(1.06 * 330 + 30, 0);
    expect(best).toMatchObject({ stopsLeft: 0, looksLeft: 0 });
  });

  it('give a hose that goes tight when the engine moves as much more as that takes', async () => {
    const mends = await keepsItsWord(PULLED, ['rock']);
    expect(mends.aimedAt.map((f) => f.check)).toContain('rock');
    const [best] = mends.answers;
    expect(best?.mend.edit).toMatchObject({ kind: 'slack' });
    // The port goes 20 mm further off, and 330 mm lie taut between the mouths.
    expect(best?.lay.liveLengthMm).toBeGreaterThan(350);
    expect(best?.longerMm).toBeGreaterThan(0);
  });

  it('hold a loose hose with a clamp of the table, in its middle', async () => {
    const { answers } = await keepsItsWord(LOOSE, ['clampSpacing']);
    const [best] = answers;
    expect(best?.mend.edit).toMatchObject({
      kind: 'hold',
      put: [{ before: 0, support: { kind: 'clamp', part: 'clamp-14' } }],
    });
    expect(best?.toGet).toEqual(['1 x Clamp 13 to 15']);
    const clamp = best?.lay.supports.find(({ id }) => id === 'mend-clamp-1');
    expect(Math.abs((clamp?.at.arcLengthMm ?? 0) - (best?.lay.cutLengthMm ?? 0) / 2)).toBeLessThan(150);
  });

  it('keep bare braid off a panel: a sleeve that goes over the hose, or braid that does not saw', async () => {
    const mends = await keepsItsWord(SAWING, ['chafe']);
    expect(edits(mends)).toContainEqual({ kind: 'sleeve', sleeve: 'fits' });
    expect(edits(mends)).toContainEqual({ kind: 'hose', hose: 'soft' });
    expect(edits(mends)).not.toContainEqual({ kind: 'sleeve', sleeve: 'small' });
  });

  it('take a conductive hose from the shelf for petrol, not a weak one and not another size', async () => {
    const mends = await keepsItsWord(CHARGING);
    expect(mends.aimedAt.map((f) => f.check)).toContain('staticCharge');
    expect(edits(mends).filter(({ kind }) => kind === 'hose')).toEqual([{ kind: 'hose', hose: 'conductive' }]);
  });

  it('hold a hose away from a post that an engine carries it to', async () => {
    const mends = await keepsItsWord(CARRIED_NEAR, ['rock']);
    expect(mends.aimedAt.map((f) => f.rule)).toEqual(['rock-clearance']);
    const [best] = mends.answers;
    expect(best?.mend.edit).toMatchObject({ kind: 'hold', put: [{ support: { kind: 'clamp' } }] });
    const worst = best?.lay.rock?.extremes.map((e) => e.tightest?.clearanceMm ?? 99) ?? [];
    expect(Math.min(...worst)).toBeGreaterThanOrEqual(12);
  });

  it('take a wider hose for oil to a pump, with its ends and an adapter on each port', async () => {
    const mends = await keepsItsWord(STARVED, ['flowSpeed', 'suctionPressure']);
    expect(mends.aimedAt).toHaveLength(2);
    const [best] = mends.answers;
    const adapters = [{ adapter: 'widens', outlet: 'straight' }];
    expect(best?.mend.edit).toMatchObject({ kind: 'size', hose: 'wide', a: { end: 'end-12', adapters } });
    expect(best?.cured).toHaveLength(2);
    // 45 L/min in 26 mm: 45 / 6e4 / (pi / 4 x 0.026^2) = 1.413 m/s
    expect(best?.lay.flow?.speedMPerS).toBeCloseTo(1.413, 3);
    // Two adapters of 45 mm stand between the ports now.
    expect(best?.longerMm).toBeLessThan(-80);
  });

  it('put a clamp that bears the heat in the place of one that does not', async () => {
    const mends = await keepsItsWord(COOKED, ['clampHeat']);
    expect(edits(mends)).toContainEqual({
      kind: 'change-support',
      support: expect.objectContaining({ id: 'c', part: 'tough' }),
    });
  });

  it('slide a clamp along the hose from that of a hose of another pressure', async () => {
    const mends = await keepsItsWord(CLAMPED_TOGETHER, ['clampPressure']);
    const [best] = mends.answers;
    expect(best?.mend.edit).toMatchObject({ kind: 'change-support', support: { id: 'c' } });
    const at = best?.mend.edit.kind === 'change-support' ? best.mend.edit.support.point : [300, 0, 0];
    expect(Math.hypot((at[0] ?? 0) - 300, (at[1] ?? 0) - 25)).toBeGreaterThan(14 + 12);
  });

  it('take hose out of a drain that rises where the bay leans', async () => {
    const mends = await keepsItsWord(LEANING, ['drainLean', 'drainFall']);
    expect(mends.aimedAt.map((f) => f.check)).toContain('drainLean');
    const [best] = mends.answers;
    expect(best?.mend.edit).toEqual({ kind: 'slack', slack: 0.05 });
    expect(best?.cured.map(({ finding }) => finding.check)).toContain('drainLean');
  });

  it('turn a hose away from heat with other ends, and say how far it then keeps', async () => {
    const mends = await keepsItsWord(UNDER_HEAT, ['laid', 'heatDistance']);
    expect(mends.aimedAt.some((f) => f.severity === 'stop')).toBe(true);
    const [best] = mends.answers;
    expect(best?.mend.edit.kind).toBe('ends');
    expect(best?.lay.outcome).toBe('laid');
    expect(best?.words).toMatch(/^A (45|90) degree steel end at END [AB]/);
    const heat = mends.answers.flatMap(({ cured }) => cured).find(({ finding }) => finding.check === 'heatDistance');
    expect(heat?.words).toMatch(/^keeps .* from pipe \(Pipe\), .* more than asked$/);
    expect(heat?.marginMm).toBeGreaterThanOrEqual(0);
    // Both ends leave nothing to mend: one end alone, which finds no way for its straight tails, is not tried so.
    expect(best).toMatchObject({ stopsLeft: 0, looksLeft: 0 });
    expect(edits(mends).map(({ kind }) => kind)).not.toContain('end');
  }, 400_000);

  it('bring what is to be looked at only to cure what forbids cutting, and tell it: a sharp end at a pump', async () => {
    const mends = await keepsItsWord(HOT_SUCTION, ['laid', 'heatDistance']);
    const both = mends.answers.find(({ mend }) => mend.edit.kind === 'ends');
    expect(both?.brings).toMatchObject([{ severity: 'look', rule: 'suction-end-angle', measured: 90, limit: 45 }]);
    expect(both?.stopsLeft).toBe(0);
    expect(both?.left.map((f) => f.rule)).toContain('suction-end-angle');
    // That is left to mend, so one end is told too that cures what forbids cutting and gives up straight tails for it.
    expect(edits(mends).map(({ kind }) => kind)).toContain('end');
  }, 400_000);

  it('put a second change on one that cures what is asked and brings what is to be looked at', async () => {
    const mends = await keepsItsWord(CHARGED_BY_A_PANEL, ['staticCharge']);
    expect(mends.aimedAt.map((f) => f.severity)).toEqual(['look']);
    const [best] = mends.answers;
    expect(best?.mend.edit).toEqual({
      kind: 'both',
      first: { kind: 'hose', hose: 'conductive' },
      second: { kind: 'sleeve', sleeve: 'fits' },
    });
    expect(best?.words).toMatch(/^Another hose, Conductive hose .*, and a sleeve over the whole hose/);
    expect(best?.toGet).toHaveLength(2);
    expect(best).toMatchObject({ stopsLeft: 0, looksLeft: 0 });
    expect(mends.nearest).toBeUndefined();
  });

  it('where nothing on the shelf mends it, tell what comes nearest and what that lacks', async () => {
    const { mends } = await mendsOf(STILL_STARVED, ['flowSpeed']);
    expect(mends.answers).toEqual([]);
    const [nearest] = mends.nearest ?? [];
    expect(nearest?.mend.edit).toMatchObject({ kind: 'size', hose: 'wide' });
    // 45 L/min through 16 mm.
    expect(nearest?.words).toContain('comes nearer: The oil runs at 3.73 m/s');
    expect(nearest?.left.map((f) => f.check)).toContain('flowSpeed');
  });

  it('say the same twice, and nothing of a run that has nothing to mend', async () => {
    const [one, two] = [await mendsOf(TIGHT), await mendsOf(TIGHT)];
    const plain = (mends: Mends) => JSON.stringify(mends, (key, value) => (key === 'timingsMs' ? {} : value));
    expect(plain(two.mends)).toBe(plain(one.mends));
    const clean = await mendsOf(TIGHT, ['heatDistance']);
    expect(clean.mends).toMatchObject({ aimedAt: [], tried: 0, answers: [] });
  });

  it('say the same with a crew that lays several at once, whoever is first', async () => {
    // Some of its changes are laid near where the hose lies, some anew.
    const [files, checks] = [storyFiles(CARRIED_NEAR), ['rock']];
    const report: LayReport = await output(runJob('layRuns', files, UNWATCHED, newJobMemory()));
    const input = { ...files, run: 'line', report, checks };
    const plain = (mends: unknown) => JSON.stringify(mends, (key, value) => (key === 'timingsMs' ? {} : value));
    const alone = plain(await output(runJob('tryMends', input, UNWATCHED, newJobMemory())));
    for (const seed of [1, 2]) {
      const memory = newJobMemory(dawdlers(2, seed));
      expect(plain(await output(runJob('tryMends', input, UNWATCHED, memory)))).toBe(alone);
    }
  });

  it('stop when they are asked to, and ask for a lay that is as the project is', async () => {
    const { files, report } = await mendsOf(TIGHT);
    let told = 0;
    const impatient: Watch = { ...UNWATCHED, isCancelled: () => told > 3, report: () => void told++ };
    expect(await runJob('tryMends', { ...files, run: 'line', report }, impatient, newJobMemory())).toEqual({
      kind: 'cancelled',
    });
    const other = { ...files, projectText: files.projectText.replace('"slack":0.06', '"slack":0.07') };
    expect(await runJob('tryMends', { ...other, run: 'line', report }, UNWATCHED, newJobMemory())).toMatchObject({
      kind: 'bad-input',
      problems: [{ path: 'run' }],
    });
    const unlaid = { ...report, lays: [] };
    expect(
      await runJob('tryMends', { ...files, run: 'line', report: unlaid }, UNWATCHED, newJobMemory()),
    ).toMatchObject({
      kind: 'bad-input',
    });
  });
});
