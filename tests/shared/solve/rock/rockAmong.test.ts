import { describe, expect, it } from 'vitest';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import type { Lay } from '../../../../shared/document/lay/schema.ts';
import type { ResolvedProject } from '../../../../shared/document/project/resolve.ts';
import { layRuns } from '../../../../shared/solve/layRuns/layRuns.ts';
import { bodyBays } from '../../../../shared/solve/rock/bodyBays.ts';
import { type RockMemory, rockAmong } from '../../../../shared/solve/rock/rockAmong.ts';
import { rockLays } from '../../../../shared/solve/rock/rockLays.ts';
import { rockingBlocks } from '../../../arbitraries/rockingBlocks.ts';

/** The same project with one run of another slack. */
function withSlack(resolved: ResolvedProject, id: string, slack: number): ResolvedProject {
  const change = <R extends { id: string }>(run: R): R => (run.id === id ? { ...run, slack } : run);
  return {
    project: { ...resolved.project, runs: resolved.project.runs.map(change) },
    runs: resolved.runs.map((r) => ({ ...r, run: change(r.run) })),
  };
}

/** The same project asked so much room between hoses, and about braid so far off, that what is told at the extremes is of the other hose. */
function withRoom({ project, runs }: ResolvedProject): ResolvedProject {
  const reason = 'so that the other hose counts';
  const asked = [
    { rule: 'hose-spacing', value: 400, reason },
    { rule: 'chafe-rock', value: 600, reason },
  ];
  return { project: { ...project, overrides: [...project.overrides, ...asked] }, runs };
}

describe.each([3, 21])('a run rocked again and again among others, seed %i', async (seed) => {
  const { mesh, bay, project: asIs } = rockingBlocks(seed);
  const bays = bodyBays(asIs.project, mesh, UNWATCHED);
  const lays = await layRuns({ project: asIs.project, bay }, asIs, asIs.runs, [], UNWATCHED);
  const [run = ''] = asIs.runs.map((r) => r.run.id);
  const others = lays.filter((lay) => lay.run !== run);

  async function laidWith(slack: number): Promise<{ changed: ResolvedProject; laid: Lay[] }> {
    const changed = withSlack(asIs, run, slack);
    const own = changed.runs.filter((r) => r.run.id === run);
    return { changed, laid: await layRuns({ project: changed.project, bay }, changed, own, others, UNWATCHED) };
  }

  it('is told of, and the others with it, as when all are rocked together', async () => {
    const memory: RockMemory = {};
    const seen = new Set<string>();
    const known = new Set<unknown>();
    for (const slack of [0.05, 0.08, 0.12]) {
      const { changed, laid } = await laidWith(slack);
      const asked = withRoom(changed);
      const among = rockAmong(asked, bays, laid, run, memory, UNWATCHED);
      expect(among).toEqual(rockLays(asked, bays, laid, UNWATCHED));
      known.add(memory.others?.known);
      seen.add(JSON.stringify(among.find((lay) => lay.run === run)?.rock));
      const theirs = among.filter((lay) => lay.run !== run).flatMap(({ rock }) => rock?.extremes ?? []);
      expect(theirs.some(({ tightest }) => tightest?.to.kind === 'run')).toBe(true);
      expect(theirs.some(({ rubs }) => rubs?.some(({ to }) => to.kind === 'run'))).toBe(true);
    }
    expect(seen.size).toBe(3);
    expect(known.size).toBe(1);
  });

  it('is told of alone where only it is asked for', async () => {
    const { changed, laid } = await laidWith(0.08);
    expect(rockAmong(changed, bays, laid, run, {}, UNWATCHED, true)).toEqual(
      rockLays(changed, bays, laid, UNWATCHED, run),
    );
  });

  it('knows the others anew where they, or what the project asks, are not as they were', async () => {
    const memory: RockMemory = {};
    rockAmong(asIs, bays, lays, run, memory, UNWATCHED);
    const known = memory.others?.known;
    rockAmong(asIs, bays, lays, run, memory, UNWATCHED);
    expect(memory.others?.known).toBe(known);
    const stricter = withRoom(asIs);
    expect(rockAmong(stricter, bays, lays, run, memory, UNWATCHED)).toEqual(rockLays(stricter, bays, lays, UNWATCHED));
    const without = lays.filter((lay) => lay.run === run);
    expect(rockAmong(asIs, bays, without, run, memory, UNWATCHED)).toEqual(rockLays(asIs, bays, without, UNWATCHED));
  });
});
