import { cross, type Vec3 } from '../../../shared/base/vec3.ts';
import type { BayMesh } from '../../../shared/document/project/schema.ts';

const AXES: Record<BayMesh['upAxis'], Vec3> = {
  '+x': [1, 0, 0],
  '-x': [-1, 0, 0],
  '+y': [0, 1, 0],
  '-y': [0, -1, 0],
  '+z': [0, 0, 1],
  '-z': [0, 0, -1],
};

/** How a scan is seen from the side when this axis of its file points up: what the picture has to its right, and upwards. */
export function viewFrom(upAxis: BayMesh['upAxis']): { readonly right: Vec3; readonly up: Vec3 } {
  const view = VIEWS.get(upAxis) as { right: Vec3; up: Vec3 };
  return view;
}

const VIEWS = new Map(
  (Object.entries(AXES) as [BayMesh['upAxis'], Vec3][]).map(([name, up]) => {
    const ahead: Vec3 = up[1] === 0 ? [0, 1, 0] : [0, 0, 1];
    return [name, { right: cross(ahead, up), up }] as const;
  }),
);
