import type { Project } from '../../document/project/schema.ts';
import type { TubeField } from '../bay/tubeField.ts';
import type { BodyBay } from './bodyBays.ts';

/** Everything else at the same extreme: the bodies of the bay, and the other hoses as they lie then. */
export interface Surroundings {
  readonly project: Project;
  readonly bays: readonly BodyBay[];
  readonly others: TubeField;
  /** those of the others that it is measured against; absent = all of them */
  readonly among?: ReadonlySet<string>;
}

/** The other runs that a hose is measured against, in the order of their tubes. */
export function runsAround({ others, among }: Surroundings): string[] {
  const runs = [...new Set(others.tubes.map(({ run }) => run))];
  return among === undefined ? runs : runs.filter((run) => among.has(run));
}
