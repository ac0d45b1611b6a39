import { lengthOf } from '../../base/vec3.ts';
import type { RodLoads } from './rodLoads.ts';
import type { RodPull } from './rodProblem.ts';
import type { RodScale, RodState, RodWorkspace } from './rodState.ts';

/** Scratch: from a pull's place to its node, mm. */
const off = new Float64Array(3);

/** Fills `off`; its length is the answer. */
function placeOff(pull: RodPull, state: RodState, scale: RodScale): number {
  const at = 3 * pull.node;
  off[0] = state.nodes[at]! * scale.lengthMm + scale.originX - pull.point[0];
  off[1] = state.nodes[at + 1]! * scale.lengthMm + scale.originY - pull.point[1];
  off[2] = state.nodes[at + 2]! * scale.lengthMm + scale.originZ - pull.point[2];
  return lengthOf(off[0]!, off[1]!, off[2]!);
}

/** mm. How far off a node may be before the spring pulls no harder. */
function yieldMm(pull: RodPull): number {
  return (pull.strengthN ?? Number.POSITIVE_INFINITY) / pull.stiffnessNPerMm;
}

/**
 * Energy of the springs that pull nodes to their places, EI/L: half the stiffness times the square of what is missing,
 * and from the spring's strength on a straight line (Huber's function).
 */
export function pullEnergy(scale: RodScale, loads: RodLoads, state: RodState): number {
  let sum = 0;
  for (const pull of loads.pulls) {
    const d = placeOff(pull, state, scale);
    const most = yieldMm(pull);
    sum += pull.stiffnessNPerMm * (d <= most ? 0.5 * d * d : most * (d - 0.5 * most));
  }
  return sum / scale.energyNmm;
}

/** Adds the springs' derivatives to those of the pressed nodes, after these were placed; whether there are any. */
export function placePulls(ws: RodWorkspace, scale: RodScale, loads: RodLoads): boolean {
  const { pressed, pressDepthMm, pressGradient, pressHessian } = ws;
  for (const pull of loads.pulls) {
    const k = pull.node;
    if (!pressed[k]) {
      pressed[k] = 1;
      pressDepthMm[k] = 0;
      pressGradient.fill(0, 3 * k, 3 * k + 3);
      pressHessian.fill(0, 9 * k, 9 * k + 9);
    }
    const d = placeOff(pull, ws.state, scale);
    const most = yieldMm(pull);
    const share = d <= most ? 1 : most / d;
    const slope = (share * pull.stiffnessNPerMm * scale.lengthMm) / scale.energyNmm;
    for (let r = 0; r < 3; r++) {
      pressGradient[3 * k + r] = pressGradient[3 * k + r]! + slope * off[r]!;
      for (let c = 0; c < 3; c++) {
        const along = share < 1 ? (off[r]! * off[c]!) / (d * d) : 0;
        const at = 9 * k + 3 * r + c;
        pressHessian[at] = pressHessian[at]! + slope * scale.lengthMm * ((r === c ? 1 : 0) - along);
      }
    }
  }
  return loads.pulls.length > 0;
}
