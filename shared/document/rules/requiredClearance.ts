import { SWEEP_WITHIN_MM } from '../../base/tolerances.ts';
import { bundleOf } from '../project/bundleOf.ts';
import type { Fluid, Project, Skin, SkinKind } from '../project/schema.ts';
import { type RuleUse, ruleValue } from './index.ts';

/** What a clearance is held against, and on whose word. */
export interface RequiredClearance {
  /** mm, scan uncertainty included. */
  readonly requiredMm: number;
  /** The rule; its value is not what counts where `statedMm` is there. */
  readonly use: RuleUse;
  /** mm, the skin's own clearance or the bundle's gap where the project states one, without the scan uncertainty. */
  readonly statedMm?: number;
}

const RULE_OF_KIND: Record<SkinKind, string> = {
  plain: 'clearance-plain',
  hot: 'clearance-hot',
  composite: 'clearance-composite',
  'sharp-edge': 'clearance-sharp-edge',
  moving: 'clearance-moving',
  wiring: 'clearance-wiring',
};

/** Fluids that burn where an arc meets them; hoses of others keep from wiring as from any part. */
const FLAMMABLE: readonly Fluid[] = ['engine-oil', 'petrol', 'e85', 'methanol', 'avgas', 'diesel', 'other'];

/** Whether what a run carries burns; one that the project does not have is taken to. */
export function carriesFlammable(project: Pick<Project, 'runs'>, runId: string): boolean {
  const run = project.runs.find(({ id }) => id === runId);
  return run === undefined || FLAMMABLE.includes(run.service.fluid);
}

/** Clearance that a run needs to a skin: the skin's own, else the rule for its kind; scan uncertainty on top, and how finely a sweep is known. */
export function requiredSkinClearance(
  project: Pick<Project, 'bay' | 'overrides' | 'runs'>,
  runId: string,
  skin: Skin,
): RequiredClearance {
  const kind = skin.kind === 'wiring' && !carriesFlammable(project, runId) ? 'plain' : skin.kind;
  const use = ruleValue(project, RULE_OF_KIND[kind], runId);
  const base = skin.clearanceMm ?? use.value;
  return {
    requiredMm: base + project.bay.scanUncertaintyMm + (skin.sweep === undefined ? 0 : SWEEP_WITHIN_MM),
    use,
    ...(skin.clearanceMm === undefined ? {} : { statedMm: skin.clearanceMm }),
  };
}

/**
 * Clearance between two runs: the gap of the bundle in which both lie, since hoses tied together are where they are tied,
 * whatever the scan says; else the larger of what either asks, and scan uncertainty on top, since the ports that hold
 * them were placed on the scan.
 */
export function requiredRunClearance(
  project: Pick<Project, 'bay' | 'overrides' | 'bundles'>,
  runId: string,
  otherRunId: string,
): RequiredClearance {
  const mine = ruleValue(project, 'hose-spacing', runId);
  const others = ruleValue(project, 'hose-spacing', otherRunId);
  const use = others.value > mine.value ? others : mine;
  const bundle = bundleOf(project, runId, otherRunId);
  if (bundle === undefined) return { requiredMm: use.value + project.bay.scanUncertaintyMm, use };
  const gapMm = bundle.gapMm ?? 0;
  return { requiredMm: gapMm, use, statedMm: gapMm };
}
