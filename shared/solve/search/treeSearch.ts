import type { RandomSource } from '../../base/random.ts';
import { lengthOf, type Vec3 } from '../../base/vec3.ts';
import { stopIfCancelled, type Watch } from '../../base/watch.ts';
import { connectionPath, connectWithShortTurns } from '../../geometry/arcLineConnector.ts';
import {
  type ArcLinePath,
  joinPaths,
  type Pose,
  partOfPath,
  pathEnd,
  pathLengthMm,
  reversedPath,
  reversedPose,
} from '../../geometry/arcLinePath.ts';
import { type ClearSpace, isPathClear, turnedRoundSpace } from './clearSpace.ts';

export interface TreeResult {
  readonly path?: ArcLinePath;
  readonly start: number;
  readonly goal: number;
  readonly steps: number;
}

interface TreeNode {
  readonly pose: Pose;
  readonly parent: number;
  /** from the parent's pose to this one */
  readonly path?: ArcLinePath;
  readonly root: number;
}

/** A turn of the heading by one radian counts as so many radii of distance when the nearest node is sought. */
const RADII_PER_RADIAN = 0.7;
/** A branch grows by at most so many radii at once. */
const LONGEST_BRANCH_RADII = 3;
/** A branch is cut back by halves until clear, at most so often. */
const MOST_CUTS = 3;
const PIECES_OF_OTHER_TREE = 3;

/**
 * Looks for a way from any start to any goal by two trees of poses that grow towards random poses and towards each
 * other (RRT-Connect, Kuffner and LaValle 2000, with arc-straight-arc connections as steering). The tree at the goals is
 * grown with the hose's direction turned round, which changes no curvature. The first way found is returned, unshortened.
 */
export function treeSearch(
  space: ClearSpace,
  starts: readonly Pose[],
  goals: readonly Pose[],
  radiusMm: number,
  random: RandomSource,
  mostSteps: number,
  watch: Watch,
): TreeResult {
  const ahead = starts.map((pose, root): TreeNode => ({ pose, parent: -1, root }));
  const back = goals.map((pose, root): TreeNode => ({ pose: reversedPose(pose), parent: -1, root }));
  const backwards = turnedRoundSpace(space);
  for (let step = 0; step < mostSteps; step++) {
    if (step % 64 === 0) stopIfCancelled(watch);
    const [grown, other] = step % 2 === 0 ? [ahead, back] : [back, ahead];
    const around = grown === ahead ? space : backwards;
    const node = grow(around, grown, randomPose(space, random), radiusMm);
    if (!node) continue;
    for (const meeting of nearest(other, reversedPose(node.pose), radiusMm, PIECES_OF_OTHER_TREE)) {
      const to = reversedPose((other[meeting] as TreeNode).pose);
      const connection = connectWithShortTurns(node.pose, to, radiusMm);
      if (!connection) continue;
      const bridge = connectionPath(node.pose, to, connection);
      if (!isPathClear(around, bridge)) continue;
      const here = joinPaths(pathTo(grown, grown.length - 1), bridge);
      const there = reversedPath(pathTo(other, meeting));
      const whole = joinPaths(here, there);
      const roots: [number, number] = [node.root, (other[meeting] as TreeNode).root];
      if (grown === ahead) return { path: whole, start: roots[0], goal: roots[1], steps: step + 1 };
      return { path: reversedPath(whole), start: roots[1], goal: roots[0], steps: step + 1 };
    }
  }
  return { start: -1, goal: -1, steps: mostSteps };
}

function grow(space: ClearSpace, tree: TreeNode[], aim: Pose, radiusMm: number): TreeNode | undefined {
  const parent = nearest(tree, aim, radiusMm, 1)[0] as number;
  const { pose, root } = tree[parent] as TreeNode;
  const connection = connectWithShortTurns(pose, aim, radiusMm);
  if (!connection) return undefined;
  const whole = connectionPath(pose, aim, connection);
  let lengthMm = Math.min(pathLengthMm(whole), LONGEST_BRANCH_RADII * radiusMm);
  for (let cut = 0; cut <= MOST_CUTS; cut++, lengthMm /= 2) {
    const path = partOfPath(whole, 0, lengthMm);
    if (!isPathClear(space, path)) continue;
    const node = { pose: pathEnd(path), parent, path, root };
    tree.push(node);
    return node;
  }
  return undefined;
}

/** Numbers of the `count` nodes nearest to a pose, by distance and difference of heading. */
function nearest(tree: readonly TreeNode[], { point, direction }: Pose, radiusMm: number, count: number): number[] {
  const best: { cost: number; node: number }[] = [];
  for (let node = 0; node < tree.length; node++) {
    const { point: p, direction: d } = (tree[node] as TreeNode).pose;
    const away = lengthOf(p[0] - point[0], p[1] - point[1], p[2] - point[2]);
    const apart = Math.acos(Math.max(-1, Math.min(1, d[0] * direction[0] + d[1] * direction[1] + d[2] * direction[2])));
    const cost = away + RADII_PER_RADIAN * radiusMm * apart;
    if (best.length === count && cost >= (best[count - 1] as { cost: number }).cost) continue;
    best.push({ cost, node });
    best.sort((a, b) => a.cost - b.cost);
    best.length = Math.min(best.length, count);
  }
  return best.map(({ node }) => node);
}

function pathTo(tree: readonly TreeNode[], node: number): ArcLinePath {
  const pieces: ArcLinePath[] = [];
  let at = tree[node] as TreeNode;
  while (at.path) {
    pieces.push(at.path);
    at = tree[at.parent] as TreeNode;
  }
  return pieces.reverse().reduce(joinPaths, { start: at.pose, segments: [] });
}

function randomPose(space: ClearSpace, random: RandomSource): Pose {
  const { min, max } = space.field.bounds;
  const within = (axis: 0 | 1 | 2): number => min[axis] + random() * (max[axis] - min[axis]);
  const point: Vec3 = [within(0), within(1), within(2)];
  const z = 2 * random() - 1;
  const turn = 2 * Math.PI * random();
  const flat = Math.sqrt(1 - z * z);
  return { point, direction: [flat * Math.cos(turn), flat * Math.sin(turn), z] };
}
