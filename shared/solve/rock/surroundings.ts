import type { Project } from '../../document/project/schema.ts';
import type { TubeField } from '../bay/tubeField.ts';
import type { BodyBay } from './bodyBays.ts';

/** Everything else at the same extreme: the bodies of the bay, and the other hoses as they lie then. */
export interface Surroundings {
  readonly project: Project;
  readonly bays: readonly BodyBay[];
  readonly others: TubeField;
}
