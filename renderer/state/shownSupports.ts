import { UP, type Vec3 } from '../../shared/base/vec3.ts';
import type { Lay } from '../../shared/document/lay/schema.ts';
import type { Run } from '../../shared/document/project/schema.ts';
import type { SupportKind } from './edits/supportEdits.ts';
import type { Hold } from './handStore.ts';
import { placeAt } from './layPlaces.ts';
import { supportArc } from './supportPlaces.ts';

/** A support as it is drawn. */
export interface ShownSupport {
  readonly id: string;
  readonly kind: SupportKind;
  readonly point: Vec3;
  readonly axis: Vec3;
  /** the program asks for it; the user has not put it */
  readonly proposed: boolean;
}

/**
 * What holds a run's hose: the user's supports as the project has them now, also before the run is laid again, the one in
 * the hand where the hand has it; and the clamps that the lay asks for.
 */
export function shownSupports(run: Run, lay: Lay | undefined, hold: Hold | null): readonly ShownSupport[] {
  const placed = run.supports.map((support): ShownSupport => {
    const held = hold !== null && hold.run === run.id && 'support' in hold.at && hold.at.support === support.id;
    const along = lay === undefined ? null : placeAt(lay.centreline, supportArc(lay, support));
    const axis = support.axis ?? along?.along ?? UP;
    return { id: support.id, kind: support.kind, point: held ? hold.to : support.point, axis, proposed: false };
  });
  const asked = (lay?.supports ?? [])
    .filter((support) => support.proposed)
    .map(
      ({ id, kind, at, axis }): ShownSupport => ({ id: `asked-${id}`, kind, point: at.point, axis, proposed: true }),
    );
  return [...placed, ...asked];
}
