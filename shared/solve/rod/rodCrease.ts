import type { RodLoads } from './rodLoads.ts';
import type { ContactField } from './rodProblem.ts';
import type { RodScale, RodState, RodWorkspace } from './rodState.ts';

/**
 * Where a hose lies in a crease, or between two things, the nearest surface changes from point to point, and the force
 * with it: no place has the forces in balance, although the hose plainly rests there. Such a node's field is replaced
 * by the planes of the two or three surfaces around it, each pressing by itself; the planes are taken anew until they
 * agree with the field where the node has come to lie.
 */
const MAX_PLANES = 3;

/** mm. A node with more room than this is in no crease. */
const NEAR_MM = 0.3;

/** mm. How far around a node its surfaces are looked for. */
const AROUND_MM = 0.25;

/** Cosine between directions of one and the same surface: 20 degrees. */
const SAME_SURFACE = 0.94;

/** mm. Planes and field agree at a node when their gaps differ by less. */
const AGREEMENT_MM = 0.02;

const OFFSETS = [0, 0, 0, 1, 0, 0, -1, 0, 0, 0, 1, 0, 0, -1, 0, 0, 0, 1, 0, 0, -1];

/** mm, from a node to one of its planes. */
export function planeGapMm(ws: RodWorkspace, scale: RodScale, state: RodState, k: number, i: number): number {
  const p = 12 * k + 4 * i;
  const { creasePlanes: planes } = ws;
  const x = state.nodes[3 * k]! * scale.lengthMm + scale.originX;
  const y = state.nodes[3 * k + 1]! * scale.lengthMm + scale.originY;
  const z = state.nodes[3 * k + 2]! * scale.lengthMm + scale.originZ;
  return planes[p]! * x + planes[p + 1]! * y + planes[p + 2]! * z - planes[p + 3]!;
}

/** Gradient and Hessian of a node in a crease: the sum over the planes it is pressed into. */
export function pressCrease(ws: RodWorkspace, scale: RodScale, loads: RodLoads, k: number): void {
  const { creased, creasePlanes: planes, pressed, pressGradient, pressHessian } = ws;
  ws.pressDepthMm[k] = 0;
  pressGradient.fill(0, 3 * k, 3 * k + 3);
  pressHessian.fill(0, 9 * k, 9 * k + 9);
  const perMm = loads.pressPerMm2 * scale.lengthMm;
  for (let i = 0; i < creased[k]!; i++) {
    const gapMm = planeGapMm(ws, scale, ws.state, k, i);
    if (gapMm >= 0) continue;
    pressed[k] = 1;
    ws.pressDepthMm[k] = Math.max(ws.pressDepthMm[k]!, -gapMm);
    const p = 12 * k + 4 * i;
    for (let r = 0; r < 3; r++) {
      pressGradient[3 * k + r] = pressGradient[3 * k + r]! + perMm * gapMm * planes[p + r]!;
      for (let c = 0; c < 3; c++) {
        const at = 9 * k + 3 * r + c;
        pressHessian[at] = pressHessian[at]! + perMm * scale.lengthMm * planes[p + r]! * planes[p + c]!;
      }
    }
  }
}

/** Adds a plane to a node's unless it already has one of that surface. */
function addPlane(ws: RodWorkspace, k: number, x: number, y: number, z: number): void {
  const { creased, creasePlanes: planes, probe } = ws;
  const count = creased[k]!;
  for (let i = 0; i < count; i++) {
    const p = 12 * k + 4 * i;
    if (planes[p]! * probe.nx + planes[p + 1]! * probe.ny + planes[p + 2]! * probe.nz > SAME_SURFACE) return;
  }
  if (count === MAX_PLANES) return;
  const p = 12 * k + 4 * count;
  planes[p] = probe.nx;
  planes[p + 1] = probe.ny;
  planes[p + 2] = probe.nz;
  planes[p + 3] = probe.nx * x + probe.ny * y + probe.nz * z - probe.gapMm;
  creased[k] = count + 1;
}

function placeCrease(ws: RodWorkspace, field: ContactField, scale: RodScale, k: number): void {
  ws.creased[k] = 0;
  const x = ws.state.nodes[3 * k]! * scale.lengthMm + scale.originX;
  const y = ws.state.nodes[3 * k + 1]! * scale.lengthMm + scale.originY;
  const z = ws.state.nodes[3 * k + 2]! * scale.lengthMm + scale.originZ;
  for (let i = 0; i < OFFSETS.length; i += 3) {
    const sx = x + AROUND_MM * OFFSETS[i]!;
    const sy = y + AROUND_MM * OFFSETS[i + 1]!;
    const sz = z + AROUND_MM * OFFSETS[i + 2]!;
    field.gapAt(sx, sy, sz, ws.probe);
    if (i === 0 && ws.probe.gapMm > NEAR_MM) return;
    addPlane(ws, k, sx, sy, sz);
  }
  // One surface alone is no crease: the field itself, with its curvature, serves better.
  if (ws.creased[k] === 1) ws.creased[k] = 0;
}

/** Looks for creases at every node of the workspace's state; whether there are any. */
export function placeCreases(ws: RodWorkspace, scale: RodScale, loads: RodLoads): boolean {
  if (!loads.contact) return false;
  let any = false;
  for (let k = 1; k < ws.edges; k++) {
    placeCrease(ws, loads.contact, scale, k);
    if (ws.creased[k]) any = true;
  }
  return any;
}

/**
 * Whether a node pressed by the field alone has a second surface at hand, which the field, answering for the nearest,
 * keeps silent about. Needs `placeContacts` at this state.
 */
export function creaseUnknown(ws: RodWorkspace, scale: RodScale, loads: RodLoads): boolean {
  if (!loads.contact) return false;
  for (let k = 1; k < ws.edges; k++) {
    if (ws.creased[k] || !ws.pressed[k]) continue;
    placeCrease(ws, loads.contact, scale, k);
    if (ws.creased[k]) return true;
  }
  return false;
}

/** Whether at every node in a crease the nearest plane still says what the field says. */
export function creasesHold(ws: RodWorkspace, scale: RodScale, loads: RodLoads): boolean {
  if (!loads.contact) return true;
  for (let k = 1; k < ws.edges; k++) {
    if (!ws.creased[k]) continue;
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i < ws.creased[k]!; i++) least = Math.min(least, planeGapMm(ws, scale, ws.state, k, i));
    const x = ws.state.nodes[3 * k]! * scale.lengthMm + scale.originX;
    const y = ws.state.nodes[3 * k + 1]! * scale.lengthMm + scale.originY;
    const z = ws.state.nodes[3 * k + 2]! * scale.lengthMm + scale.originZ;
    loads.contact.gapAt(x, y, z, ws.probe);
    const room = Math.min(least, ws.probe.gapMm);
    // Away from the surface it does not matter how far: nothing presses there.
    if (room < 0 && Math.abs(least - ws.probe.gapMm) > AGREEMENT_MM) return false;
  }
  return true;
}
