import { HEAT_BALANCE } from '../../base/tolerances.ts';
import { airFilmWPerM2K, type BayAir } from './airFilm.ts';
import { KELVIN, STEFAN_BOLTZMANN } from './exitance.ts';

/** One place of a hose as a ring of equal sectors, a metre long: each has a node at the outside and one at the liner. */
export interface Ring {
  readonly sectors: number;
  /** of hose or sleeve */
  readonly outsideDiameterMm: number;
  /** gives out and takes in alike */
  readonly emissivity: number;
  /** W/(m K), all sectors together: from outside to liner, and from liner to fluid */
  readonly wallWPerMK: number;
  readonly filmWPerMK: number;
  /** W/(m K) between neighbouring sectors, of the outer and of the inner layer */
  readonly besideOuterWPerMK: number;
  readonly besideInnerWPerMK: number;
  /** J/(m K), all sectors together; the fluid's is of use only where it stands */
  readonly storedJPerMK: { readonly outer: number; readonly inner: number; readonly fluid: number };
}

/** What comes at a ring: W/m2 that falls on each sector, air, and the fluid: running at a temperature, or standing. */
export interface RingLoad {
  readonly incomingWPerM2: ArrayLike<number>;
  readonly air: BayAir;
  /** deg C of a fluid that runs and keeps it; absent = it stands and takes what it is given */
  readonly fluidC?: number;
}

/** Temperatures, deg C: of the outside and of the liner by sector, then of the fluid. */
export type RingState = Float64Array;

/** A step in time from a known state, for what is not yet steady. */
export interface RingStep {
  readonly from: RingState;
  readonly seconds: number;
}

/** W/m. Where a ring's heat goes; `off` is what does not balance. */
export interface RingBalance {
  readonly takenIn: number;
  readonly givenOut: number;
  readonly toAir: number;
  readonly toFluid: number;
  readonly stored: number;
  readonly off: number;
}

/** A ring all at one temperature, deg C, to begin from. */
export function evenRing(sectors: number, temperatureC: number, fluidC = temperatureC): RingState {
  const state = new Float64Array(2 * sectors + 1).fill(temperatureC);
  state[2 * sectors] = fluidC;
  return state;
}

const MOST_STEPS = 60;

/**
 * The temperatures at which every node of a ring gives out what it takes in: steady, or at the end of one step in time
 * (Euler's implicit rule). Newton's method, with the air's film taken anew at each step; ends when what is out of balance
 * at any node is within HEAT_BALANCE of what the ring takes in.
 */
export function solveRing(ring: Ring, load: RingLoad, guess: RingState, step?: RingStep): RingState {
  const state = guess.slice();
  const size = state.length;
  const matrix = new Float64Array(size * size);
  const off = new Float64Array(size);
  for (let turn = 0; turn < MOST_STEPS; turn++) {
    const turnover = fillBalance(ring, load, state, step, matrix, off);
    if (greatest(off) <= HEAT_BALANCE * turnover) break;
    eliminate(matrix, off, size);
    for (let i = 0; i < size; i++) state[i] = state[i]! + off[i]!;
  }
  return state;
}

/** The heat of a ring in a state, W/m; with a step, also what it stores. */
export function ringBalance(ring: Ring, load: RingLoad, state: RingState, step?: RingStep): RingBalance {
  const n = ring.sectors;
  const sectorM = (Math.PI * ring.outsideDiameterMm) / 1000 / n;
  const film = airFilmWPerM2K(ring.outsideDiameterMm, meanOf(state, n), load.air);
  let [takenIn, givenOut, toAir, toFluid, stored] = [0, 0, 0, 0, 0];
  for (let i = 0; i < n; i++) {
    takenIn += sectorM * ring.emissivity * load.incomingWPerM2[i]!;
    givenOut += sectorM * ring.emissivity * STEFAN_BOLTZMANN * (state[i]! + KELVIN) ** 4;
    toAir += sectorM * film * (state[i]! - load.air.temperatureC);
    toFluid += (ring.filmWPerMK / n) * (state[n + i]! - state[2 * n]!);
    if (step === undefined) continue;
    stored += ((ring.storedJPerMK.outer / n) * (state[i]! - step.from[i]!)) / step.seconds;
    stored += ((ring.storedJPerMK.inner / n) * (state[n + i]! - step.from[n + i]!)) / step.seconds;
  }
  return { takenIn, givenOut, toAir, toFluid, stored, off: takenIn - givenOut - toAir - toFluid - stored };
}

function meanOf(state: RingState, n: number): number {
  let sum = 0;
  for (let i = 0; i < n; i++) sum += state[i]!;
  return sum / n;
}

function greatest(values: Float64Array): number {
  let most = 0;
  for (const value of values) most = Math.max(most, Math.abs(value));
  return most;
}

/** Fills what flows into each node, W/m, and how it falls as the nodes warm, and answers what the ring turns over. */
function fillBalance(
  ring: Ring,
  load: RingLoad,
  state: RingState,
  step: RingStep | undefined,
  matrix: Float64Array,
  into: Float64Array,
): number {
  const n = ring.sectors;
  const size = 2 * n + 1;
  const sectorM = (Math.PI * ring.outsideDiameterMm) / 1000 / n;
  const shine = sectorM * ring.emissivity;
  const toAir = sectorM * airFilmWPerM2K(ring.outsideDiameterMm, meanOf(state, n), load.air);
  matrix.fill(0);
  into.fill(0);
  let turnover = 0;
  const join = (i: number, j: number, wPerMK: number): void => {
    const flow = wPerMK * (state[j]! - state[i]!);
    into[i] = into[i]! + flow;
    into[j] = into[j]! - flow;
    matrix[i * size + i]! += wPerMK;
    matrix[j * size + j]! += wPerMK;
    matrix[i * size + j]! -= wPerMK;
    matrix[j * size + i]! -= wPerMK;
  };
  for (let i = 0; i < n; i++) {
    const kelvin = state[i]! + KELVIN;
    const taken = shine * load.incomingWPerM2[i]!;
    const given = shine * STEFAN_BOLTZMANN * kelvin ** 4;
    into[i] = into[i]! + taken - given - toAir * (state[i]! - load.air.temperatureC);
    matrix[i * size + i]! += (4 * given) / kelvin + toAir;
    turnover += taken + given;
    join(i, n + i, ring.wallWPerMK / n);
    join(n + i, 2 * n, ring.filmWPerMK / n);
    if (n > 1) join(i, (i + 1) % n, ring.besideOuterWPerMK);
    if (n > 1) join(n + i, n + ((i + 1) % n), ring.besideInnerWPerMK);
  }
  if (step !== undefined) storeHeat(ring, state, step, matrix, into);
  if (load.fluidC !== undefined) holdFluid(state, load.fluidC, matrix, into, turnover);
  return turnover;
}

function storeHeat(ring: Ring, state: RingState, step: RingStep, matrix: Float64Array, into: Float64Array): void {
  const n = ring.sectors;
  const { outer, inner, fluid } = ring.storedJPerMK;
  const size = state.length;
  for (let i = 0; i < size; i++) {
    const perSecond = (i < n ? outer / n : i < 2 * n ? inner / n : fluid) / step.seconds;
    into[i] = into[i]! - perSecond * (state[i]! - step.from[i]!);
    matrix[i * size + i]! += perSecond;
  }
}

/** A fluid that runs keeps its temperature, whatever it is given. */
function holdFluid(state: RingState, fluidC: number, matrix: Float64Array, into: Float64Array, turnover: number): void {
  const size = state.length;
  const last = size - 1;
  for (let j = 0; j < size; j++) matrix[last * size + j] = 0;
  // Scaled to a flow, so that the end test weighs it as one.
  matrix[last * size + last] = turnover;
  into[last] = turnover * (fluidC - state[last]!);
}

/** Solves matrix x = into in place, into becoming x: Gauss without pivots, since every row is ruled by its diagonal. */
function eliminate(matrix: Float64Array, into: Float64Array, size: number): void {
  for (let k = 0; k < size; k++) {
    for (let i = k + 1; i < size; i++) {
      const share = matrix[i * size + k]! / matrix[k * size + k]!;
      if (share === 0) continue;
      for (let j = k + 1; j < size; j++) matrix[i * size + j]! -= share * matrix[k * size + j]!;
      into[i] = into[i]! - share * into[k]!;
    }
  }
  for (let i = size - 1; i >= 0; i--) {
    let sum = into[i]!;
    for (let j = i + 1; j < size; j++) sum -= matrix[i * size + j]! * into[j]!;
    into[i] = sum / matrix[i * size + i]!;
  }
}
