import { distance } from '../../base/vec3.ts';
import type { Finding } from '../../document/lay/schema.ts';
import { CHASSIS_BODY, type Run, type Support } from '../../document/project/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { pressureText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';

/** mm. Clamps of two hoses whose surfaces would be less apart are one clamp, or bolted to one: under a finger's breadth, common practice, no source. */
const TOGETHER_MM = 12;

/**
 * Hoses of high and of low pressure clamped together where no bundle ties them: clamps of two runs on one body at nearly one place,
 * kPa apart. Told once a pair of runs, at the one that the project names first. The other hose is taken to be as thick as this one.
 */
export function clampPressure({ project, run, lay }: CheckContext): Finding[] {
  const use = ruleValue(project, 'bundle-pressure', run.run.id);
  const first = project.runs.findIndex(({ id }) => id === run.run.id);
  return project.runs.slice(first + 1).flatMap((other) => {
    if (project.bundles?.some(({ runs }) => runs.includes(run.run.id) && runs.includes(other.id))) return [];
    const shared = sharedClamp(run.run, other, lay.outsideDiameterMm + TOGETHER_MM);
    const at = lay.supports.find(({ id }) => id === shared?.id)?.at;
    if (shared === undefined) return [];
    return judge({
      check: 'clampPressure',
      run: run.run.id,
      use,
      sense: 'at-most',
      measured: Math.abs(other.service.pressureKpa - run.run.service.pressureKpa),
      unit: 'kPa',
      severity: 'look',
      ...(at === undefined ? {} : { at }),
      with: { kind: 'run', id: other.id },
      message: `${pressureText(run.run.service.pressureKpa)} in this hose and ${pressureText(other.service.pressureKpa)} in "${other.name}", clamped side by side: the hose of high pressure works and chafes the other.`,
      mend: 'Clamp each by itself, apart from the other.',
    });
  });
}

function sharedClamp(run: Run, other: Run, withinMm: number): Support | undefined {
  const theirs = clampsOf(other);
  return clampsOf(run).find((mine) =>
    theirs.some((clamp) => bodyOf(clamp) === bodyOf(mine) && distance(clamp.point, mine.point) < withinMm),
  );
}

function clampsOf({ supports }: Run): Support[] {
  return supports.filter(({ kind }) => kind === 'clamp');
}

function bodyOf({ body = CHASSIS_BODY.id }: Support): string {
  return body;
}
