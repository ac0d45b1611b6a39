import type { Vec3 } from '../../base/vec3.ts';
import type { Project } from '../../document/project/schema.ts';
import { requiredSkinClearance } from '../../document/rules/requiredClearance.ts';
import { inverseMotion, movePoint, type RigidMotion, turnDirection } from '../../geometry/rigidMotion.ts';
import { buildContactField } from '../bay/contactField.ts';
import { buildTubeField } from '../bay/tubeField.ts';
import { type Neighbour, skinNeighbour } from '../layRun/neighbours.ts';
import type { ContactField } from '../rod/rodProblem.ts';
import type { BodyBay } from './bodyBays.ts';

/** Where each body stands. */
export type Motions = (body: string) => RigidMotion;

const NO_TUBES = buildTubeField([]);

/**
 * What a hose may come to lie against when bodies have moved: the nearest surface of any of them, each asked where it
 * was scanned. held: where the run is held, mm, moved already.
 */
export function movedContact(
  bays: readonly BodyBay[],
  motions: Motions,
  outsideRadiusMm: number,
  held: readonly Vec3[],
): ContactField {
  const fields = bays.map(({ body, bay }) => {
    const motion = motions(body);
    const back = inverseMotion(motion);
    const heldThere = held.map((p) => movePoint(back, p));
    return { motion, back, field: buildContactField(bay, NO_TUBES, outsideRadiusMm, heldThere) };
  });
  const found = { gapMm: 0, nx: 0, ny: 0, nz: 0 };
  return {
    gapAt(x, y, z, out) {
      out.gapMm = Number.POSITIVE_INFINITY;
      for (const { motion, back, field } of fields) {
        const [px, py, pz] = movePoint(back, [x, y, z]);
        field.gapAt(px, py, pz, found);
        if (found.gapMm >= out.gapMm) continue;
        const [nx, ny, nz] = turnDirection(motion, [found.nx, found.ny, found.nz]);
        Object.assign(out, { gapMm: found.gapMm, nx, ny, nz });
      }
    },
  };
}

/** Every skin of every body where it stands then, with what one run keeps from it; of one skin on two bodies, two. */
export function movedNeighbours(
  project: Project,
  run: string,
  bays: readonly BodyBay[],
  motions: Motions,
): Neighbour[] {
  return bays.flatMap(({ body, bay }) => {
    const motion = motions(body);
    const back = inverseMotion(motion);
    return bay.skins.map((skin): Neighbour => {
      const here = skinNeighbour(bay, skin, requiredSkinClearance(project, run, skin.skin).requiredMm);
      return {
        requiredMm: here.requiredMm,
        distanceTo: (p, boundMm) => here.distanceTo(movePoint(back, p), boundMm),
        describe: (p) => {
          const { thing, onThing } = here.describe(movePoint(back, p));
          return { thing, onThing: movePoint(motion, onThing) };
        },
      };
    });
  });
}
