import type { Finding } from '../../../shared/document/lay/schema.ts';
import { Shape } from '../../widgets/Shape.tsx';
import { SEVERITY_SHAPES, SEVERITY_WORDS } from '../runStateShape.ts';

/** A finding that a change leaves, or that it brings. */
export function LeftFinding({ finding, isNew }: { finding: Finding; isNew: boolean }) {
  return (
    <li className="mend-line">
      <Shape kind={SEVERITY_SHAPES[finding.severity]} size={14} />
      <span>
        <b>
          {SEVERITY_WORDS[finding.severity]}, {isNew ? 'new' : 'as before'}:
        </b>{' '}
        {finding.message}
      </span>
    </li>
  );
}
