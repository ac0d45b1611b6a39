import type { Finding } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { pressureText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';

/** Hoses of high and of low pressure in one bundle, kPa apart: told once a pair, at the run that the project names first. */
export function bundlePressure({ project, run }: CheckContext): Finding[] {
  const use = ruleValue(project, 'bundle-pressure', run.run.id);
  const order = project.runs.map((r) => r.id);
  const bundles = (project.bundles ?? []).filter((b) => b.runs.includes(run.run.id));
  return bundles.flatMap((bundle) =>
    project.runs
      .filter((other) => bundle.runs.includes(other.id) && order.indexOf(other.id) > order.indexOf(run.run.id))
      .flatMap((other) => {
        const measured = Math.abs(other.service.pressureKpa - run.run.service.pressureKpa);
        return judge({
          check: 'bundlePressure',
          run: run.run.id,
          use,
          sense: 'at-most',
          measured,
          unit: 'kPa',
          severity: 'look',
          with: { kind: 'run', id: other.id },
          message: `${pressureText(run.run.service.pressureKpa)} in this hose and ${pressureText(other.service.pressureKpa)} in "${other.name}", tied together in the bundle "${bundle.name}": the hose of high pressure works and chafes the other.`,
          mend: 'Tie hoses of like pressure together, or lead this one by itself.',
        });
      }),
  );
}
