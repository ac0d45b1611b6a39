import type { RodLoads } from './rodLoads.ts';
import type { RodPull } from './rodProblem.ts';
import type { RodScale, RodState, RodWorkspace } from './rodState.ts';

/** From a pull's place to its node, mm, along one axis (0, 1, 2). */
function offMm(pull: RodPull, state: RodState, scale: RodScale, axis: number): number {
  const origin = axis === 0 ? scale.originX : axis === 1 ? scale.originY : scale.originZ;
  return state.nodes[3 * pull.node + axis]! * scale.lengthMm + origin - (pull.point[axis] as number);
}

/** Energy of the springs that pull nodes to their places, EI/L: half the stiffness times the square of what is missing. */
export function pullEnergy(scale: RodScale, loads: RodLoads, state: RodState): number {
  let sum = 0;
  for (const pull of loads.pulls)
    for (let i = 0; i < 3; i++) sum += 0.5 * pull.stiffnessNPerMm * offMm(pull, state, scale, i) ** 2;
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
    const stiffness = (pull.stiffnessNPerMm * scale.lengthMm) / scale.energyNmm;
    for (let i = 0; i < 3; i++) {
      pressGradient[3 * k + i] = pressGradient[3 * k + i]! + stiffness * offMm(pull, ws.state, scale, i);
      pressHessian[9 * k + 4 * i] = pressHessian[9 * k + 4 * i]! + stiffness * scale.lengthMm;
    }
  }
  return loads.pulls.length > 0;
}
