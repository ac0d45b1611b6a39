import { invariant } from '../../base/invariant.ts';
import { add, lengthOf, scale as scaled, sub, type Vec3 } from '../../base/vec3.ts';
import { Cancelled, UNWATCHED, type Watch } from '../../base/watch.ts';
import { leaveSaddle } from './leaveSaddle.ts';
import { resampleToLength } from './resampleToLength.ts';
import { contactsOf, deepestMm } from './rodContact.ts';
import { creasesHold, creaseUnknown, placeCreases } from './rodCrease.ts';
import { bendingEnergy, closureOf, placeNodes, rodEnergy } from './rodEnergy.ts';
import {
  CONTACT_STIFFNESS_N_PER_MM,
  MAX_CREASE_ROUNDS,
  MAX_ESCAPES,
  MAX_ITERATIONS,
  MAX_PRESSED_MM,
  MAX_SHORT,
  MAX_STIFFENINGS,
  STABLE_SHIFT,
  STIFFENING,
} from './rodLimits.ts';
import { rodLoads } from './rodLoads.ts';
import { newton } from './rodNewton.ts';
import type { RodProblem, RodShape } from './rodProblem.ts';
import { endAt, type Reach, reach } from './rodReach.ts';
import { factor, type RodRun } from './rodRun.ts';
import { type RodWorkspace, rodScale, takeWorkspace } from './rodState.ts';
import { startTwist, twistEnergy } from './rodTwist.ts';
import { softenGuess } from './softenGuess.ts';

/** The guess with its end points put on the ends' points, the rest moved along in proportion. */
function fittedGuess(problem: RodProblem, start: Reach): Float64Array {
  const { guess, a, b } = problem;
  const last = guess.length / 3 - 1;
  const pointOf = (k: number): Vec3 => [guess[3 * k]!, guess[3 * k + 1]!, guess[3 * k + 2]!];
  const moveA = sub(endAt(a, start.clockA).point, pointOf(0));
  const moveB = sub(endAt(b, start.clockB).point, pointOf(last));
  const out = new Float64Array(guess.length);
  for (let k = 0; k <= last; k++) {
    const f = k / last;
    out.set(add(pointOf(k), add(scaled(moveA, 1 - f), scaled(moveB, f))), 3 * k);
  }
  return out;
}

/** Writes edges along a polyline of N + 1 points into the state; an edge without length goes on as the one before. */
function setTangents(ws: RodWorkspace, points: Float64Array): void {
  const { tangents } = ws.state;
  for (let i = 0; i < tangents.length; i += 3) {
    const x = points[i + 3]! - points[i]!;
    const y = points[i + 4]! - points[i + 1]!;
    const z = points[i + 5]! - points[i + 2]!;
    const chord = lengthOf(x, y, z);
    const known = chord > 0;
    tangents[i] = known ? x / chord : i > 0 ? tangents[i - 3]! : 1;
    tangents[i + 1] = known ? y / chord : i > 0 ? tangents[i - 2]! : 0;
    tangents[i + 2] = known ? z / chord : i > 0 ? tangents[i - 1]! : 0;
  }
}

function startRun(problem: RodProblem, start: Reach, ws: RodWorkspace): RodRun {
  const scale = rodScale(problem);
  ws.multiplier.fill(0);
  ws.askedGap.fill(0);
  ws.creased.fill(0);
  ws.state.clockA = start.clockA;
  ws.state.clockB = start.clockB;
  const fitted = fittedGuess(problem, start);
  const length = start.kind === 'slack' ? problem.lengthMm : 0;
  setTangents(ws, resampleToLength(fitted, length, problem.edges, problem.down));
  placeNodes(ws.state, problem, scale);
  if (start.kind === 'slack') softenGuess(ws);
  placeNodes(ws.state, problem, scale);
  const loads = rodLoads(problem, scale, problem.contactStiffnessNPerMm ?? CONTACT_STIFFNESS_N_PER_MM);
  startTwist(ws, loads.twist, problem.twist?.nearRad ?? 0);
  return {
    problem,
    scale,
    loads,
    ws,
    iterations: 0,
    maxIterations: problem.maxIterations ?? MAX_ITERATIONS,
    residual: 0,
    penalty: 0,
    shift: 0,
    stiffenings: 0,
    creaseRounds: 0,
    patience: MAX_SHORT,
    touching: false,
  };
}

/** Makes the contact stiffer where something is pressed in too deep; false where nothing is, or it is stiff enough. */
function stiffened(run: RodRun): boolean {
  if (!run.touching || run.stiffenings === MAX_STIFFENINGS || deepestMm(run.ws) <= MAX_PRESSED_MM) return false;
  run.stiffenings++;
  const first = run.problem.contactStiffnessNPerMm ?? CONTACT_STIFFNESS_N_PER_MM;
  run.loads = rodLoads(run.problem, run.scale, first * STIFFENING ** run.stiffenings);
  return true;
}

/** Takes the creases anew; whether there are any. */
function creased(run: RodRun): boolean {
  if (run.creaseRounds === MAX_CREASE_ROUNDS) return false;
  run.creaseRounds++;
  return placeCreases(run.ws, run.scale, run.loads);
}

/** Newton's method, over saddles, creases and through stiffer contact, to a minimum or until no way on is known. */
function settle(run: RodRun, watch: Watch): { converged: boolean; stable: boolean } {
  let escapes = 0;
  for (;;) {
    const mayEscape = !run.problem.acceptSaddle && escapes < MAX_ESCAPES;
    const end = newton(run, watch, mayEscape);
    if (end === 'stuck') {
      // Without a crease it was only a hard way: let it be longer.
      if (!creased(run)) run.patience *= 2;
    } else if (end === 'lost') {
      if (!creased(run)) return { converged: false, stable: false };
    } else if (end === 'equilibrium' && !creasesHold(run.ws, run.scale, run.loads)) {
      if (run.creaseRounds === MAX_CREASE_ROUNDS) return { converged: false, stable: false };
      creased(run);
    } else if (end === 'equilibrium' && creaseUnknown(run.ws, run.scale, run.loads) && creased(run)) {
      // Settle again, with the surfaces of the crease each pressing by itself.
    } else if (end === 'near-saddle' || !stiffened(run)) {
      const stable = end === 'equilibrium' && factor(run, STABLE_SHIFT);
      if (end === 'equilibrium' && (stable || !mayEscape)) return { converged: true, stable };
      escapes++;
      if (!leaveSaddle(run)) return { converged: false, stable: false };
    }
  }
}

function shapeOf(run: RodRun, outcome: RodShape['outcome'], stable: boolean): RodShape {
  const { ws, scale, problem } = run;
  const { state, multiplier } = ws;
  const nodes = new Float64Array(state.nodes.length);
  for (let i = 0; i < nodes.length; i += 3) {
    nodes[i] = state.nodes[i]! * scale.lengthMm + scale.originX;
    nodes[i + 1] = state.nodes[i + 1]! * scale.lengthMm + scale.originY;
    nodes[i + 2] = state.nodes[i + 2]! * scale.lengthMm + scale.originZ;
  }
  return {
    outcome,
    nodes,
    startDirection: endAt(problem.a, state.clockA).direction,
    endDirection: endAt(problem.b, state.clockB).direction,
    clockARad: state.clockA,
    clockBRad: state.clockB,
    energyNmm: rodEnergy(ws, scale, run.loads, state) * scale.energyNmm,
    bendingNmm: bendingEnergy(state, ws.edges) * scale.energyNmm,
    twistingNmm: twistEnergy(run.loads.twist, state) * scale.energyNmm,
    twistRad: state.twistRad,
    torqueNmm: ((problem.twist?.torsionalStiffnessNmm2 ?? 0) * state.twistRad) / problem.lengthMm,
    endForceN: [-multiplier[0]! * scale.forceN, -multiplier[1]! * scale.forceN, -multiplier[2]! * scale.forceN],
    residual: run.residual,
    closureMm: closureOf(state, new Float64Array(3)) * scale.lengthMm,
    iterations: run.iterations,
    stable,
    contacts: contactsOf(ws, scale, run.loads),
    pressedMm: deepestMm(ws),
  };
}

function checkProblem(p: RodProblem): void {
  invariant(Number.isInteger(p.edges) && p.edges >= 4, 'relaxRod: edges must be a whole number of 4 or more');
  invariant(p.lengthMm > 0 && p.stiffnessNmm2 > 0, 'relaxRod: length and stiffness must be above 0');
  invariant(p.weightNPerMm >= 0, 'relaxRod: weight must not be below 0');
  invariant(!p.twist || p.twist.torsionalStiffnessNmm2 >= 0, 'relaxRod: torsional stiffness must not be below 0');
  invariant(p.guess.length >= 6 && p.guess.length % 3 === 0, 'relaxRod: the guess needs two points or more');
}

/**
 * The natural shape of a hose of fixed length between two ends: the nearest minimum, from the guess, of bending energy,
 * weight and, where the ends hold it so, twist, under contact. The hose is an inextensible rod, alike in all directions,
 * of N equal straight edges (discrete Kirchhoff rod; curvature 2 tan(angle/2) / l at the nodes, half cells at the clamped
 * ends; twist spread evenly).
 * Newton's method on the edges' directions with the end force as multiplier, O(N) per step, line search, saddles left.
 * @param problem mm, N, rad, bay frame; see `RodProblem`
 * @param watch asked at every step whether to stop; the answer is then the state reached, as `cancelled`
 * Accuracy: second order in 1/N; see the tests for measured errors against Euler's elastica and against
 * Kirchhoff's equations integrated from one end. Contact is without friction, at the nodes; a node in a crease is held by the planes of its surfaces. Deterministic.
 */
export function relaxRod(problem: RodProblem, watch: Watch = UNWATCHED): RodShape {
  checkProblem(problem);
  const start = reach(problem);
  const ws = takeWorkspace(problem.edges);
  try {
    const run = startRun(problem, start, ws);
    if (start.kind === 'too-short') return shapeOf(run, 'too-short', false);
    if (start.kind === 'straight') return shapeOf(run, 'converged', true);
    return relaxed(run, watch);
  } finally {
    ws.busy = false;
  }
}

function relaxed(run: RodRun, watch: Watch): RodShape {
  try {
    const { converged, stable } = settle(run, watch);
    return shapeOf(run, converged ? 'converged' : 'not-converged', stable);
  } catch (stopped) {
    if (stopped instanceof Cancelled) return shapeOf(run, 'cancelled', false);
    throw stopped;
  }
}
