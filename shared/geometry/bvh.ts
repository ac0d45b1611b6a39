/** Exact distance and ray queries on a mesh: the public face of the box hierarchy. */
export { buildBvh } from './bvhBuild.ts';
export { type Nearest, nearestDistance, nearestPoint, newNearest } from './bvhNearest.ts';
export { firstHit, newRayHit, type RayHit } from './bvhRay.ts';
export { type Bvh, bvhBytes } from './bvhTree.ts';
