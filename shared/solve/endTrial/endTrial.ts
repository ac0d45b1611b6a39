import { partOf, stopIfCancelled, type Watch } from '../../base/watch.ts';
import type { TrialEntry } from '../../document/endTrial/schema.ts';
import { heatRoomC } from '../../document/lay/heatRoomC.ts';
import type { Finding, Lay } from '../../document/lay/schema.ts';
import { hoseCost } from '../../document/parts/hoseCost.ts';
import type { End } from '../../document/parts/schema.ts';
import type { ResolvedEnd, ResolvedProject, ResolvedRun } from '../../document/project/resolve.ts';
import type { Tube } from '../bay/tubeField.ts';
import { runChecks } from '../checks/index.ts';
import type { LayContext } from '../layRun/layContext.ts';
import { crewOfOne, type LayCrew, type LayTask } from '../layRuns/layTask.ts';
import { shareWatch } from '../layRuns/shareWatch.ts';
import { shelfFor } from './shelf.ts';

/** Who lays and measures, and on what day. */
export interface TrialBy {
  /** absent = the pairs are laid one after the other */
  readonly crew?: LayCrew | undefined;
  /** adds to a clean lay of the project with these ends what its surroundings make of it; absent = nothing */
  readonly measure?: ((resolved: ResolvedProject, lay: Lay, watch: Watch) => Lay) | undefined;
  /** `YYYY-MM-DD`, as the host has it; absent = no hose is told to be too old */
  readonly today?: string | undefined;
}

export interface Trial {
  readonly tried: number;
  readonly entries: readonly TrialEntry[];
}

/**
 * One run laid with every pair of ends on the shelf that fit its hose and ports, those that lie clean, best first. An end
 * that is not the chosen one is free to turn about its port, since a stated clock was for the chosen one. others: hoses
 * that stay where they are. Ranked by, in this order: fewest stops, fewest looks, fewest proposed clamps, least bend of
 * both ends together, least slack over the wanted one, furthest under the hose's own temperature by steps of what an estimate tells
 * apart, most room at the tightest place, least cost where prices are stated, shortest cut; then by ids, so that the same input gives the
 * same order. The pairs do not depend on each other: a crew may lay several at once.
 */
export async function endTrial(
  context: LayContext,
  resolved: ResolvedProject,
  run: ResolvedRun,
  table: readonly End[],
  others: readonly Tube[],
  watch: Watch,
  { crew = crewOfOne(context), measure = unmeasured, today }: TrialBy = {},
): Promise<Trial> {
  const pairs = shelfFor(run.a, table).flatMap((a) => shelfFor(run.b, table).map((b) => ({ a, b })));
  const tasks = pairs.map(({ a, b }): LayTask => ({ how: 'if-clean', run: withEnds(run, a, b), others }));
  const partFor = shareWatch(partOf(watch, 0, LAYING_SHARE), pairs.length);
  const done = await crew.doEach(tasks, (i) => {
    const { a, b } = pairs[i] as (typeof pairs)[number];
    const part = partFor(i);
    const doing = `${a.bendAngleDeg} and ${b.bendAngleDeg} degrees`;
    part.report({ fraction: 0, doing });
    return { ...part, report: ({ fraction }) => part.report({ fraction, doing }) };
  });
  const entries = done.flatMap(({ lay }, i): TrialEntry[] => {
    if (lay === undefined) return [];
    const { a, b } = pairs[i] as (typeof pairs)[number];
    const ended = (tasks[i] as LayTask).run;
    const within = { ...resolved, runs: resolved.runs.map((r) => (r === run ? ended : r)) };
    const share = (of: number): number => LAYING_SHARE + (1 - LAYING_SHARE) * (of / pairs.length);
    stopIfCancelled(watch);
    const measured = measure(within, lay, partOf(watch, share(i), share(i + 1)));
    const findings = runChecks({ ...resolved, runs: [ended] }, [measured], today);
    const { heat } = measured;
    const cost = hoseCost(run.hose, [a, b], lay.cutLengthMm);
    return [
      {
        ends: { a: a.id, b: b.id },
        bendsDeg: { a: a.bendAngleDeg, b: b.bendAngleDeg },
        lay: measured,
        findings,
        ...(heat === undefined ? {} : { heatRoomC: heatRoomC(heat) }),
        ...(cost === undefined ? {} : { cost }),
      },
    ];
  });
  return { tried: pairs.length, entries: entries.sort(byRank) };
}

/** Of the progress of a trial, what laying is given; the rest is measuring. */
const LAYING_SHARE = 0.8;

function unmeasured(_resolved: ResolvedProject, lay: Lay): Lay {
  return lay;
}

function withEnds(run: ResolvedRun, a: End, b: End): ResolvedRun {
  return {
    ...run,
    a: withEnd(run.a, a),
    b: withEnd(run.b, b),
    run: { ...run.run, a: { port: run.a.port.id, end: a.id }, b: { port: run.b.port.id, end: b.id } },
  };
}

function withEnd(current: ResolvedEnd, end: End): ResolvedEnd {
  if (end.id === current.end.id) return current;
  const { clockDeg: _, ...seated } = current;
  return { ...seated, end };
}

/** Below 0: p comes first. */
export function byRank(p: TrialEntry, q: TrialEntry): number {
  const [x, y] = [ranks(p), ranks(q)];
  const i = x.findIndex((value, k) => value !== y[k]);
  return i < 0 ? idOf(p).localeCompare(idOf(q), 'en') : (x[i] as number) - (y[i] as number);
}

/** deg C. Estimates that differ by less say nothing. */
const HEAT_STEP_C = 5;

function ranks({ lay, findings, bendsDeg, heatRoomC: roomC = 0, cost }: TrialEntry): number[] {
  const count = (severity: Finding['severity']): number => findings.filter((f) => f.severity === severity).length;
  const room = Math.min(...lay.clearances.map((c) => c.clearanceMm - c.requiredMm));
  return [
    count('stop'),
    count('look'),
    lay.supports.filter((s) => s.proposed).length,
    bendsDeg.a + bendsDeg.b,
    Math.round(lay.slack * 1000),
    -Math.round(roomC / HEAT_STEP_C),
    -Math.round(room),
    cost ?? Number.POSITIVE_INFINITY,
    Math.round(lay.cutLengthMm),
  ];
}

function idOf({ ends }: TrialEntry): string {
  return `${ends.a} ${ends.b}`;
}
