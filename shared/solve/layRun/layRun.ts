import type { Watch } from '../../base/watch.ts';
import type { Lay } from '../../document/lay/schema.ts';
import type { ResolvedRun } from '../../document/project/resolve.ts';
import type { TubeField } from '../bay/tubeField.ts';
import {
  ATTEMPTS,
  type Attempt,
  EVERYTHING,
  EVERYTHING_BESIDE,
  EVERYTHING_SOUGHT,
  WITHOUT_CHARACTER,
  WITHOUT_CHARACTER_BESIDE,
} from './attempts.ts';
import { breatheWell } from './breatheWell.ts';
import { layBundled } from './bundled.ts';
import { withApart } from './givenUp.ts';
import { lacksAtMostSlack } from './lacksOf.ts';
import { downTheLadder } from './ladder.ts';
import type { LayContext } from './layContext.ts';
import { layOf } from './layOf.ts';
import { layWithoutHose } from './layWithoutHose.ts';
import { runSetting } from './runLimits.ts';

export type { LayContext } from './layContext.ts';

/**
 * Lays one run: global search between the ends, relaxation of the hose along each way found, proposed clamps where it
 * will not keep clear by itself, and the measured result. others: hoses that are already laid. Always answers a lay:
 * `laid` when it lacks nothing (`lacksOf`); `near-miss` with its reason when the best found does;
 * `no-way` when only a hose through the bay could be shown. The same input gives the same lay on every host.
 */
export function layRun(context: LayContext, resolved: ResolvedRun, others: TubeField, watch: Watch): Lay {
  return layWith(ATTEMPTS, context, resolved, others, watch);
}

/** As `layRun`, but no room is given up where the run does not lie clean: `near-miss` or `no-way` then, and much sooner. */
export function layAsAsked(context: LayContext, resolved: ResolvedRun, others: TubeField, watch: Watch): Lay {
  return layWith([EVERYTHING, WITHOUT_CHARACTER], context, resolved, others, watch);
}

/** As `layAsAsked`, sooner: not on other sides of things than the shortest way and gentler ones go. */
export function layBeside(context: LayContext, resolved: ResolvedRun, others: TubeField, watch: Watch): Lay {
  return layWith([EVERYTHING_BESIDE, WITHOUT_CHARACTER_BESIDE], context, resolved, others, watch);
}

/** As `layRun`, for a run known to find no way that keeps all that is asked, such as among fewer hoses: that is not looked for again, but with all means. */
export function layWithLess(context: LayContext, resolved: ResolvedRun, others: TubeField, watch: Watch): Lay {
  const less = ATTEMPTS.filter((attempt) => attempt !== EVERYTHING && attempt !== WITHOUT_CHARACTER);
  return layWith(less, context, resolved, others, watch);
}

/** As `layWithLess`, sooner: a way that keeps all is not looked for with all means either, nor without what the service asks alone. For trying many things one after the other. */
export function layWithLessBriefly(context: LayContext, resolved: ResolvedRun, others: TubeField, watch: Watch): Lay {
  const kept: readonly Attempt[] = [EVERYTHING, EVERYTHING_SOUGHT, WITHOUT_CHARACTER];
  const less = ATTEMPTS.filter((attempt) => !kept.includes(attempt));
  return layWith(less, context, resolved, others, watch);
}

function layWith(
  attempts: readonly Attempt[],
  context: LayContext,
  resolved: ResolvedRun,
  others: TubeField,
  watch: Watch,
): Lay {
  const startedAt = watch.now();
  const setting = runSetting(context.project, resolved);
  const bundled = layBundled(context, setting, others, watch);
  const tied =
    bundled.kind === 'tied'
      ? layOf(context, setting, others, { candidate: bundled.candidate, startedAt }, watch)
      : undefined;
  if (tied?.outcome === 'laid') return tied;
  const best = downTheLadder(attempts, context, setting, others, watch);
  if (best === undefined) return tied ?? layWithoutHose(context, setting, others, { lay: watch.now() - startedAt });
  const breathed = lacksAtMostSlack(setting, best) ? breatheWell(context, setting, best.candidate, others, watch) : {};
  const lay = layOf(context, setting, others, { ...best, ...breathed, startedAt }, watch);
  if (bundled.kind === 'none') return lay;
  if (tied !== undefined && lay.outcome !== 'laid') return tied;
  return withApart(lay, bundled.kind === 'tied' ? [bundled.to] : bundled.from);
}
