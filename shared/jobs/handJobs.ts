import { bad, good, type Problem, type Result } from '../base/result.ts';
import { length } from '../base/vec3.ts';
import { partOf, type Watch } from '../base/watch.ts';
import { type HandLay, openHandLay } from '../solve/handLay/handLay.ts';
import { relayNear } from '../solve/handLay/relayNear.ts';
import { tubesOf } from '../solve/layRun/tubesOf.ts';
import type { JobInput, JobOutput } from './contract.ts';
import { bayIndex, bayMesh, bodiesOfBay, type JobMemory } from './jobMemory.ts';
import { measuredNear } from './measureLays.ts';
import { readProject, unknownRuns } from './readProject.ts';
import { reportOf } from './reportOf.ts';

/** How many runs a worker holds in its hand at once. */
const MOST_HANDS = 4;

/** The job `takeRun`: makes everything ready that moving one run by hand needs, and keeps it under a name. */
export async function takeRunJob(
  input: JobInput<'takeRun'>,
  watch: Watch,
  memory: JobMemory,
): Promise<Result<JobOutput<'takeRun'>>> {
  const read = readProject(input);
  if (!read.ok) return read;
  const { resolved, inputHash } = read.value;
  const run = resolved.runs.find((r) => r.run.id === input.run);
  if (run === undefined) return bad(unknownRuns([input.run], read.value));
  const lay = input.report.lays.find((l) => l.run === input.run);
  if (lay === undefined || lay.outcome === 'no-way') return bad([notTaken(input.run)]);
  const opened = await bayMesh(read.value, memory);
  if (!opened.ok) return opened;
  const bay = bayIndex(read.value, opened.value.mesh, memory, partOf(watch, 0, 0.8));
  const laid = new Map(input.report.lays.map((l) => [l.run, l]));
  const context = { project: resolved.project, bay };
  const held = openHandLay(context, run, lay, tubesOf(resolved, laid, input.run), watch);
  if (held === undefined) return bad([notTaken(input.run)]);
  const hand = keep(memory, `${input.run} ${inputHash} ${lay.cutLengthMm} ${memory.hands?.size ?? 0}`, held);
  return good({ hand, shape: held.move({}, watch) });
}

function notTaken(run: string): Problem {
  return { path: 'run', message: 'there is no hose of this run to take in the hand: lay it first', got: run };
}

/** Keeps a hand as the last used; the one not used for longest goes. */
function keep(memory: JobMemory, name: string, held: HandLay): string {
  const hands = memory.hands ?? new Map<string, HandLay>();
  memory.hands = hands;
  hands.delete(name);
  hands.set(name, held);
  if (hands.size > MOST_HANDS) hands.delete(hands.keys().next().value as string);
  return name;
}

/** The job `moveRun`: the shape of a run in the hand after a change. Reads no project and no mesh. */
export async function moveRunJob(
  { hand, change }: JobInput<'moveRun'>,
  watch: Watch,
  memory: JobMemory,
): Promise<Result<JobOutput<'moveRun'>>> {
  const held = memory.hands?.get(hand);
  if (held === undefined)
    return bad([{ path: 'hand', message: 'this worker holds no such run: take the run again', got: hand }]);
  const problems = unreadable(change);
  if (problems.length > 0) return bad(problems);
  keep(memory, hand, held);
  return good(held.move(change, watch));
}

/** A change comes from a pointer and never from a file, so it is only looked through for what no arithmetic survives. */
function unreadable(change: JobInput<'moveRun'>['change']): Problem[] {
  const { pull, supports = [], ports = [], locks = [] } = change;
  const numbers = [
    ...(pull === undefined ? [] : [pull.arcLengthMm, ...pull.to]),
    ...supports.flatMap((s) => [...s.point, ...(s.axis ?? [])]),
    ...ports.flatMap((p) => [...p.seatPoint, ...p.axis, ...p.up]),
    ...locks.flatMap((l) => [...l.points.flat(), ...l.startAxis, ...l.endAxis]),
  ];
  const zero = [
    ...supports.flatMap((s) => (s.axis === undefined ? [] : [s.axis])),
    ...ports.flatMap((p) => [p.axis, p.up]),
    ...locks.flatMap((l) => [l.startAxis, l.endAxis]),
  ].some((v) => length(v) === 0);
  if (numbers.every(Number.isFinite) && !zero) return [];
  return [{ path: 'change', message: 'expected finite numbers and directions that are not zero' }];
}

/** The job `relayRun`: one run laid again near where it lies, in the project as it is now; then everything is checked. */
export async function relayRunJob(
  input: JobInput<'relayRun'>,
  watch: Watch,
  memory: JobMemory,
): Promise<Result<JobOutput<'relayRun'>>> {
  const read = readProject(input);
  if (!read.ok) return read;
  const { resolved } = read.value;
  const run = resolved.runs.find((r) => r.run.id === input.run);
  if (run === undefined) return bad(unknownRuns([input.run], read.value));
  const known = new Set(resolved.runs.map((r) => r.run.id));
  const earlier = input.earlier.lays.filter((l) => known.has(l.run));
  const line = input.along ?? earlier.find((l) => l.run === input.run && l.outcome !== 'no-way')?.centreline.points;
  if (line === undefined || line.length < 2 || !line.flat().every(Number.isFinite)) return bad([notTaken(input.run)]);
  const opened = await bayMesh(read.value, memory);
  if (!opened.ok) return opened;
  const bay = bayIndex(read.value, opened.value.mesh, memory, partOf(watch, 0, 0.1));
  const context = { project: resolved.project, bay };
  const still = relayNear(context, resolved, run, earlier, line, partOf(watch, 0.1, 0.7));
  const bodies = bodiesOfBay(read.value, opened.value.mesh, memory, partOf(watch, 0.7, 0.8));
  const measured = measuredNear({ resolved, bay, bodies }, still, input.run, partOf(watch, 0.8, 1));
  const lays = measured.map((lay) => {
    const inputHash = read.value.runHashes[lay.run];
    return lay.run === input.run && inputHash !== undefined ? { ...lay, inputHash } : lay;
  });
  return good(reportOf(read.value, lays, [...read.value.warnings, ...opened.value.warnings]));
}
