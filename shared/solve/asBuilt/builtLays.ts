import { partOf, stopIfCancelled, type Watch } from '../../base/watch.ts';
import type { Lay, Tolerance } from '../../document/lay/schema.ts';
import type { ResolvedProject, ResolvedRun } from '../../document/project/resolve.ts';
import { lengthTolerance } from '../../document/rules/lengthTolerance.ts';
import { lengthText } from '../../document/wording/quantityText.ts';
import type { BayIndex } from '../bay/bayIndex.ts';
import { builtHose, type MadeAs, type PlannedHose, plannedHose } from './builtHose.ts';

/** What hoses are made in: the project and its bay. */
export interface BuiltContext {
  readonly resolved: ResolvedProject;
  readonly bay: BayIndex;
}

/**
 * Adds to each lay what an error within the tolerances of cut and clock does to its hose, and how the hose lies as the bench
 * measured it where the project says that. Each is laid anew (`builtHose`), never guessed. Lays that show no hose stay as
 * they are. only: the one run to be told of anew. The same input gives the same answer.
 */
export function builtLays(context: BuiltContext, lays: readonly Lay[], watch: Watch, only?: string): Lay[] {
  const laid = new Map(lays.map((lay) => [lay.run, lay]));
  return lays.map((lay, i) => {
    if (only !== undefined && lay.run !== only) return lay;
    const part = partOf(watch, i / lays.length, (i + 1) / lays.length);
    const { tolerance: _t, built: _b, ...plain } = lay;
    const run = context.resolved.runs.find((r) => r.run.id === lay.run);
    const planned = run && lay.outcome === 'laid' ? plannedHose(context, run, plain, laid) : undefined;
    if (run === undefined || planned === undefined) return plain;
    part.report({ fraction: 0, doing: `making ${run.run.name} otherwise` });
    return { ...plain, ...toleranceOf(planned, run, plain, part), ...builtOf(planned, run, plain, part) };
  });
}

function toleranceOf(
  planned: PlannedHose,
  { hose }: ResolvedRun,
  lay: Lay,
  watch: Watch,
): { tolerance: Tolerance } | undefined {
  const { applies, toleranceMm } = lengthTolerance(lay.cutLengthMm, hose.core);
  const { clock, cutLengthMm } = lay;
  const made: MadeAs[] = [
    ...(applies
      ? [
          { name: `cut ${lengthText(toleranceMm)} short`, cutLengthMm: cutLengthMm - toleranceMm },
          { name: `cut ${lengthText(toleranceMm)} long`, cutLengthMm: cutLengthMm + toleranceMm },
        ]
      : []),
    ...(clock.kind === 'free'
      ? []
      : [-1, 1].map((sign) => ({
          name: `clocked ${clock.toleranceDeg} degrees too ${sign < 0 ? 'little' : 'far'}`,
          cutLengthMm,
          clockDeg: clock.deg + sign * clock.toleranceDeg,
        }))),
  ];
  if (made.length === 0) return undefined;
  const poses = made.map((as) => {
    stopIfCancelled(watch);
    const { centreline: _line, ...pose } = builtHose(planned, as, watch);
    return pose;
  });
  return {
    tolerance: {
      ...(applies ? { lengthMm: toleranceMm } : {}),
      ...(clock.kind === 'free' ? {} : { clockDeg: clock.toleranceDeg }),
      poses,
    },
  };
}

function builtOf(planned: PlannedHose, { run }: ResolvedRun, lay: Lay, watch: Watch): Pick<Lay, 'built'> {
  const { asBuilt } = run;
  // What else the bench wrote down, crimps and proof, moves no hose.
  if (asBuilt?.cutLengthMm === undefined && asBuilt?.clockDeg === undefined) return {};
  const clockDeg = asBuilt.clockDeg ?? (lay.clock.kind === 'angle' ? lay.clock.deg : undefined);
  const cutLengthMm = asBuilt.cutLengthMm ?? lay.cutLengthMm;
  return {
    built: builtHose(
      planned,
      { name: 'as measured', cutLengthMm, ...(clockDeg === undefined ? {} : { clockDeg }) },
      watch,
    ),
  };
}
