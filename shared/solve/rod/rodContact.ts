import { anySquareTo, cross, length, lengthOf, type Vec3 } from '../../base/vec3.ts';
import { planeGapMm, pressCrease } from './rodCrease.ts';
import type { RodLoads } from './rodLoads.ts';
import type { ContactField, RodContact } from './rodProblem.ts';
import type { RodScale, RodState, RodWorkspace } from './rodState.ts';

/** mm. How far aside a contact is felt for its curvature: well under the roundness of any edge that matters. */
const PROBE_MM = 0.05;

/** A direction that changes by more than this over a probe has jumped to another surface, and is no curvature. */
const JUMP = 0.2;

/** A gap may close this many times as fast as the point moves (distance to a surface: 1; room asked for may grow too). */
const CLOSING_RATE = 2;

/** Asks the field at a node, unless the last answer still says that nothing is near; the gap in mm, or a lower bound. */
function askGap(ws: RodWorkspace, field: ContactField, scale: RodScale, state: RodState, k: number): number {
  const x = state.nodes[3 * k]! * scale.lengthMm + scale.originX;
  const y = state.nodes[3 * k + 1]! * scale.lengthMm + scale.originY;
  const z = state.nodes[3 * k + 2]! * scale.lengthMm + scale.originZ;
  const { askedAt, askedGap, gap } = ws;
  const moved = lengthOf(x - askedAt[3 * k]!, y - askedAt[3 * k + 1]!, z - askedAt[3 * k + 2]!);
  const left = askedGap[k]! - CLOSING_RATE * moved;
  if (left > 0) return left;
  field.gapAt(x, y, z, gap);
  askedAt[3 * k] = x;
  askedAt[3 * k + 1] = y;
  askedAt[3 * k + 2] = z;
  askedGap[k] = gap.gapMm;
  return gap.gapMm;
}

/** Energy of the pressed nodes, EI/L: half the stiffness times the depth squared each. */
export function contactEnergy(ws: RodWorkspace, scale: RodScale, loads: RodLoads, state: RodState): number {
  const field = loads.contact;
  if (!field) return 0;
  let sum = 0;
  for (let k = 1; k < ws.edges; k++) {
    if (ws.creased[k]) {
      for (let i = 0; i < ws.creased[k]!; i++) {
        const gapMm = planeGapMm(ws, scale, state, k, i);
        if (gapMm < 0) sum += gapMm * gapMm;
      }
      continue;
    }
    const gapMm = askGap(ws, field, scale, state, k);
    if (gapMm < 0) sum += gapMm * gapMm;
  }
  return 0.5 * loads.pressPerMm2 * sum;
}

/** How the direction changes from the last asked point to one a probe aside, per mm; 0 where it jumps. */
function bendAlong(ws: RodWorkspace, field: ContactField, k: number, aside: Vec3): Vec3 {
  const { askedAt, gap, probe } = ws;
  field.gapAt(
    askedAt[3 * k]! + PROBE_MM * aside[0],
    askedAt[3 * k + 1]! + PROBE_MM * aside[1],
    askedAt[3 * k + 2]! + PROBE_MM * aside[2],
    probe,
  );
  const change: Vec3 = [probe.nx - gap.nx, probe.ny - gap.ny, probe.nz - gap.nz];
  if (length(change) > JUMP) return [0, 0, 0];
  return [change[0] / PROBE_MM, change[1] / PROBE_MM, change[2] / PROBE_MM];
}

/**
 * Gradient and Hessian of half k g^2 at a pressed node whose gap was just asked: k g n, and k (n n^T + g grad n). The
 * second term is what lets a hose roll off a convex edge; grad n is felt by two probes square to n.
 */
function pressNode(ws: RodWorkspace, field: ContactField, scale: RodScale, loads: RodLoads, k: number): void {
  const { gap, pressed, pressGradient, pressHessian } = ws;
  pressed[k] = 1;
  ws.pressDepthMm[k] = -gap.gapMm;
  const n: Vec3 = [gap.nx, gap.ny, gap.nz];
  const e = anySquareTo(n);
  const f = cross(n, e);
  const alongE = bendAlong(ws, field, k, e);
  const alongF = bendAlong(ws, field, k, f);
  const ee = alongE[0] * e[0] + alongE[1] * e[1] + alongE[2] * e[2];
  const ff = alongF[0] * f[0] + alongF[1] * f[1] + alongF[2] * f[2];
  const ef =
    (alongE[0] * f[0] + alongE[1] * f[1] + alongE[2] * f[2] + alongF[0] * e[0] + alongF[1] * e[1] + alongF[2] * e[2]) /
    2;
  const slope = loads.pressPerMm2 * scale.lengthMm * gap.gapMm;
  const stiffness = loads.pressPerMm2 * scale.lengthMm * scale.lengthMm;
  for (let r = 0; r < 3; r++) {
    pressGradient[3 * k + r] = slope * n[r]!;
    for (let c = 0; c < 3; c++) {
      const bend = ee * e[r]! * e[c]! + ff * f[r]! * f[c]! + ef * (e[r]! * f[c]! + f[r]! * e[c]!);
      pressHessian[9 * k + 3 * r + c] = stiffness * (n[r]! * n[c]! + gap.gapMm * bend);
    }
  }
}

/** Finds which nodes are pressed in, with the derivatives of their energy; whether any is. */
export function placeContacts(ws: RodWorkspace, scale: RodScale, loads: RodLoads): boolean {
  const field = loads.contact;
  ws.pressed.fill(0);
  if (!field) return false;
  let any = false;
  for (let k = 1; k < ws.edges; k++) {
    if (ws.creased[k]) pressCrease(ws, scale, loads, k);
    else if (askGap(ws, field, scale, ws.state, k) < 0) pressNode(ws, field, scale, loads, k);
    if (ws.pressed[k]) any = true;
  }
  return any;
}

/** mm, how deep the deepest node is pressed in, as of the last `placeContacts`. */
export function deepestMm(ws: RodWorkspace): number {
  let deepest = 0;
  for (let k = 1; k < ws.edges; k++) if (ws.pressed[k]) deepest = Math.max(deepest, ws.pressDepthMm[k]!);
  return deepest;
}

/** The contacts of the workspace's state, in N; in a crease, the sum of what its surfaces press. */
export function contactsOf(ws: RodWorkspace, scale: RodScale, loads: RodLoads): RodContact[] {
  placeContacts(ws, scale, loads);
  const contacts: RodContact[] = [];
  for (let node = 1; node < ws.edges; node++) {
    if (!ws.pressed[node]) continue;
    const [x, y, z] = [ws.pressGradient[3 * node]!, ws.pressGradient[3 * node + 1]!, ws.pressGradient[3 * node + 2]!];
    const force = lengthOf(x, y, z);
    const inv = force > 0 ? -1 / force : 0;
    contacts.push({ node, forceN: force * scale.forceN, normal: [x * inv, y * inv, z * inv] });
  }
  return contacts;
}
