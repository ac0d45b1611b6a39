import { invariant } from '../../base/invariant.ts';
import type { Vec3 } from '../../base/vec3.ts';
import { stopIfCancelled, type Watch } from '../../base/watch.ts';
import type { Lay } from '../../document/lay/schema.ts';
import type { ResolvedRun } from '../../document/project/resolve.ts';
import { buildTubeField, type Tube } from '../bay/tubeField.ts';
import { relayOne } from '../handLay/relayNear.ts';
import { lineOfBreath } from '../layRun/breathe.ts';
import type { LayContext } from '../layRun/layContext.ts';
import { layIfClean } from '../layRun/layIfClean.ts';
import { layAsAsked, layBeside, layRun, layWithLess, layWithLessBriefly } from '../layRun/layRun.ts';

/**
 * as-asked: clean or not at all; beside: the same, not looked for on other sides of things; as-well-as-can-be: with what it breaks; with-less: the same for a run that is known to find
 * no way that keeps all; with-less-briefly: the same, with no look for such a way by all means; if-clean: no lay where it is not clean; near: again
 * near a line.
 */
export type LayHow =
  | 'as-asked'
  | 'beside'
  | 'as-well-as-can-be'
  | 'with-less'
  | 'with-less-briefly'
  | 'if-clean'
  | 'near';

/** One run to be laid, in words that can be sent to another worker: plain data, and all that the lay depends on beside its context. */
export interface LayTask {
  readonly how: LayHow;
  readonly run: ResolvedRun;
  /** hoses that lie already */
  readonly others: readonly Tube[];
  /** of a run that is laid again near a line: the line, and how it lay */
  readonly near?: { readonly line: readonly Vec3[]; readonly before?: Lay };
}

export type Line = Lay['centreline'];

export interface LaidTask {
  /** absent where a run that was to be laid only if clean does not lie clean */
  readonly lay?: Lay;
  /** the line of each breath of the lay, in order; none where it goes taut or was not let go */
  readonly breathLines: readonly (Line | undefined)[];
}

/** Does one task. A pure function of the context and the task, whichever worker does it, but for the times it tells. */
export function doLayTask(context: LayContext, { how, run, others, near }: LayTask, watch: Watch): LaidTask {
  if (how === 'near') {
    invariant(near !== undefined, 'doLayTask: a run to be laid near a line came without one');
    return { lay: relayOne(context, run, buildTubeField(others), near.line, near.before, watch), breathLines: [] };
  }
  const work = {
    'as-asked': layAsAsked,
    beside: layBeside,
    'as-well-as-can-be': layRun,
    'with-less': layWithLess,
    'with-less-briefly': layWithLessBriefly,
    'if-clean': layIfClean,
  }[how];
  const lay = work(context, run, buildTubeField(others), watch);
  if (lay !== undefined && lay.outcome !== 'no-way') tellLain(run, lay, watch);
  return lay === undefined ? { breathLines: [] } : { lay, breathLines: (lay.breathing ?? []).map(lineOfBreath) };
}

/** Shows a hose to whoever looks on as soon as it is found; the others of its round are not known yet. */
function tellLain({ run }: ResolvedRun, { centreline, outsideDiameterMm }: Lay, watch: Watch): void {
  const lain = { run: run.id, points: centreline.points, outsideDiameterMm };
  watch.report({ fraction: 1, doing: `${run.name} found a way`, lain });
}

/** Whoever does tasks, one after the other or several at once; which changes the time they take and never what they answer. */
export interface LayCrew {
  /**
   * The answers in the order of the tasks. watchOf: what task number i reports to, asked for as it
   * begins; all of them are cancelled together.
   * isIdleWork: tasks that whoever would else be idle does; others go before them.
   */
  doEach(tasks: readonly LayTask[], watchOf: (i: number) => Watch, isIdleWork?: boolean): Promise<readonly LaidTask[]>;
}

/** Does tasks here, one after the other. */
export function crewOfOne(context: LayContext): LayCrew {
  return {
    doEach: async (tasks, watchOf) =>
      tasks.map((task, i) => {
        const watch = watchOf(i);
        stopIfCancelled(watch);
        return doLayTask(context, task, watch);
      }),
  };
}
