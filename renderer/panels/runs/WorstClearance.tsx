import type { Clearance } from '../../../shared/document/lay/schema.ts';
import type { Project } from '../../../shared/document/project/schema.ts';
import { Length } from '../Length.tsx';
import { thingName } from './Nearest.tsx';
import { Value } from './Value.tsx';

interface WorstClearanceProps {
  readonly clearance: Clearance;
  /** where it is so */
  readonly where: string;
  readonly project: Project;
}

/** The clearance that has least over what is asked, beside that. */
export function WorstClearance({ clearance, where, project }: WorstClearanceProps) {
  return (
    <Value name="Tightest clearance" note={`${thingName(project, clearance.to)}, ${where}`}>
      <Length mm={clearance.clearanceMm} rounding="down" denominator={32} />
      <span className="against"> needs </span>
      <Length mm={clearance.requiredMm} rounding="up" denominator={32} />
    </Value>
  );
}
