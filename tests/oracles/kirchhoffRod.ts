/**
 * A rod found from one end on: position, frame, moment and force of Kirchhoff's rod carried along its length from a given
 * moment and force at A, by the classical fourth-order Runge-Kutta method. Whatever comes out at B, a rod held so at both
 * ends is in equilibrium there; nothing of the relaxation is used. Alike in all directions, of fixed length.
 *   r' = t,  f' = weight upwards,  m' = f x t,  every direction d of the frame: d' = (m across / EI + m along / GJ) x d
 */
export interface ShotRod {
  readonly lengthMm: number;
  /** EI and GJ, N mm^2 */
  readonly stiffnessNmm2: number;
  readonly torsionalStiffnessNmm2: number;
  readonly weightNPerMm: number;
  readonly down: readonly number[];
  /** N and N mm, of the rod beyond on the rod before, at A */
  readonly forceN: readonly number[];
  readonly momentNmm: readonly number[];
}

type State = readonly number[];

/** At A: the origin, tangent along x, material direction along y. */
function startOf(rod: ShotRod): State {
  return [0, 0, 0, 1, 0, 0, 0, 1, 0, ...rod.momentNmm, ...rod.forceN];
}

function cross(a: readonly number[], b: readonly number[]): number[] {
  return [a[1]! * b[2]! - a[2]! * b[1]!, a[2]! * b[0]! - a[0]! * b[2]!, a[0]! * b[1]! - a[1]! * b[0]!];
}

function rateOf(rod: ShotRod, s: State): number[] {
  const t = s.slice(3, 6);
  const d = s.slice(6, 9);
  const m = s.slice(9, 12);
  const f = s.slice(12, 15);
  const along = m[0]! * t[0]! + m[1]! * t[1]! + m[2]! * t[2]!;
  const turn = m.map((c, i) => (c - along * t[i]!) / rod.stiffnessNmm2 + (along / rod.torsionalStiffnessNmm2) * t[i]!);
  return [...t, ...cross(turn, t), ...cross(turn, d), ...cross(f, t), ...rod.down.map((c) => -rod.weightNPerMm * c)];
}

function plus(s: State, rate: readonly number[], by: number): State {
  return s.map((c, i) => c + by * rate[i]!);
}

/** The states at `edges + 1` equal distances: position, tangent, material direction, moment, force; 3 numbers each. */
export function shootRod(rod: ShotRod, edges: number): State[] {
  const perEdge = Math.ceil(2048 / edges);
  const h = rod.lengthMm / (edges * perEdge);
  let s = startOf(rod);
  const states = [s];
  for (let i = 1; i <= edges * perEdge; i++) {
    const k1 = rateOf(rod, s);
    const k2 = rateOf(rod, plus(s, k1, h / 2));
    const k3 = rateOf(rod, plus(s, k2, h / 2));
    const k4 = rateOf(rod, plus(s, k3, h));
    s = s.map((c, j) => c + (h / 6) * (k1[j]! + 2 * k2[j]! + 2 * k3[j]! + k4[j]!));
    if (i % perEdge === 0) states.push(s);
  }
  return states;
}
