import type { Finding } from '../../../shared/document/lay/schema.ts';
import { Shape } from '../../widgets/Shape.tsx';
import { SEVERITY_SHAPES, SEVERITY_WORDS } from '../runStateShape.ts';
import type { Standing } from './standingOf.ts';

/** A finding that a change leaves, makes worse or brings. */
export function LeftFinding({ finding, standing }: { finding: Finding; standing: Standing }) {
  return (
    <li className="mend-line">
      <Shape kind={SEVERITY_SHAPES[finding.severity]} size={14} />
      <span>
        <b>
          {SEVERITY_WORDS[finding.severity]}, {standing}:
        </b>{' '}
        {finding.message}
      </span>
    </li>
  );
}
