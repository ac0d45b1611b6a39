import type { Project, RuleOverride } from '../../../shared/document/project/schema.ts';
import { ruleById } from '../../../shared/document/rules/index.ts';
import { formatInUnit } from '../../../shared/sheets/format/index.ts';
import { withoutOverride } from '../../state/edits/overrideEdits.ts';
import { useBench } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';

/** The limits that this project sets for itself, with their reasons, to be seen and taken back. */
export function OwnLimits({ project }: { project: Project }) {
  if (project.overrides.length === 0) return null;
  return (
    <section aria-label="Limits set by hand">
      <h3>Limits set by hand</h3>
      <ul className="own-limits">
        {project.overrides.map((override) => (
          <OwnLimit key={`${override.rule} ${override.run ?? ''}`} override={override} project={project} />
        ))}
      </ul>
    </section>
  );
}

function OwnLimit({ override, project }: { override: RuleOverride; project: Project }) {
  const { document, byHand } = useBench();
  const rule = ruleById(override.rule);
  const run = project.runs.find(({ id }) => id === override.run);
  const title = rule?.title ?? override.rule;
  const remove = (): void => {
    document.edit('take own limit back', (now) => withoutOverride(now, override));
    if (run !== undefined) void byHand.settle(run.id);
  };
  return (
    <li>
      <div>
        <b>{title}</b>
        <span>
          {formatInUnit(override.value, rule?.unit ?? '')} for {run?.name ?? 'every run'}; the rule says{' '}
          {rule === undefined ? 'nothing any more' : formatInUnit(rule.value, rule.unit)}
        </span>
        <span>{override.reason}</span>
      </div>
      <Button name={`Take back the limit of ${title}`} onPress={remove}>
        Take back
      </Button>
    </li>
  );
}
