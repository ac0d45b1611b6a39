import type { Finding, Lay, LaySupport } from '../../document/lay/schema.ts';
import { bundleOf } from '../../document/project/bundleOf.ts';
import type { Project } from '../../document/project/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { lengthText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { nearestIndex, placeText } from './places.ts';

/**
 * Clamps that the program proposes against what they could stand on: the nearest surface of the bay that is not hot, mm from the
 * hose's surface. Where the user puts a clamp there is something to put it on.
 */
export function clampFoot({ project, run, lay }: CheckContext): Finding[] {
  const use = ruleValue(project, 'clamp-foot', run.run.id);
  const { profile } = lay;
  if (profile === undefined) return [];
  return lay.supports
    .filter(({ kind, proposed }) => kind === 'clamp' && proposed)
    .flatMap((support) => {
      const footMm = nearestFootMm(project, run.run.id, profile, support);
      const far = footMm >= profile.reachMm ? `more than ${lengthText(profile.reachMm)}` : lengthText(footMm);
      return judge({
        check: 'clampFoot',
        run: run.run.id,
        use,
        sense: 'at-most',
        measured: footMm,
        unit: 'mm',
        severity: 'look',
        at: support.at,
        message: `The clamp proposed ${placeText(support.at)} is ${far} from anything cool that it could stand on.`,
        mend: 'Make a bracket for it, or lead the hose otherwise: a clamp of your own, another end or another way round.',
      });
    });
}

/** As far as the profile reaches, where nothing is nearer. */
function nearestFootMm(
  project: Project,
  run: string,
  profile: NonNullable<Lay['profile']>,
  { at }: LaySupport,
): number {
  const { arcLengthMm, near, reachMm } = profile;
  const here = nearestIndex(arcLengthMm, at.arcLengthMm);
  const isHot = (skin: string): boolean => project.bay.skins.find(({ id }) => id === skin)?.kind === 'hot';
  const feet = near.filter(({ to }) => (to.kind === 'skin' ? !isHot(to.id) : isTiedTo(project, run, to.id)));
  return Math.min(reachMm, ...feet.map(({ clearanceMm }) => clearanceMm[here] ?? reachMm));
}

/** A hose of its bundle is what it is tied to. */
function isTiedTo(project: Project, run: string, other: string): boolean {
  return bundleOf(project, run, other) !== undefined;
}
