import { invariant } from '../../base/invariant.ts';

/** Below this Reynolds number a straight pipe is laminar; above the next it is turbulent; between them it may be either. */
export const LAMINAR_TO = 2300;
export const TURBULENT_FROM = 4000;
/** Relative. Newton's iteration on Colebrook's equation has settled. */
const SETTLED = 1e-15;
const MOST_STEPS = 60;

/**
 * Darcy's friction factor of turbulent flow in a round pipe: Colebrook's equation (J. Inst. Civ. Eng. 11 (1939) 133),
 * 1 / sqrt f = -2 log10(e / 3.7 + 2.51 / (Re sqrt f)). reynolds: above 0; relativeRoughness: e / D, 0 to 0.1. Newton's
 * method on 1 / sqrt f, to the last digits of a double.
 */
export function colebrook(reynolds: number, relativeRoughness: number): number {
  invariant(reynolds > 0, `colebrook: expected a Reynolds number above 0, got ${reynolds}`);
  const rough = relativeRoughness / 3.7;
  const smooth = 2.51 / reynolds;
  let x = 8;
  for (let step = 0; step < MOST_STEPS; step++) {
    const inside = rough + smooth * x;
    const off = x + 2 * Math.log10(inside);
    const slope = 1 + (2 * smooth) / (Math.LN10 * inside);
    const next = x - off / slope;
    if (Math.abs(next - x) <= SETTLED * x) return 1 / next ** 2;
    x = next;
  }
  return 1 / x ** 2;
}

/** Darcy's factor of laminar flow in a straight round pipe, 64 / Re: Hagen and Poiseuille. */
export function laminarFactor(reynolds: number): number {
  return 64 / reynolds;
}

/**
 * Darcy's factor of a straight round pipe at any Reynolds number. Where the flow may be either, between LAMINAR_TO and
 * TURBULENT_FROM, the greater of the two: the turbulent one.
 */
export function darcyFactor(reynolds: number, relativeRoughness: number): number {
  return reynolds < LAMINAR_TO ? laminarFactor(reynolds) : colebrook(reynolds, relativeRoughness);
}

/** From this Dean number on the secondary flow of a bend is felt. */
const LEAST_DEAN = 11.6;

/**
 * How many times a straight pipe's friction laminar flow has in a bend (White, Proc. R. Soc. A 123 (1929) 645).
 * boreOverBend: bore over the diameter of the bend's centreline, bore / (2 R). 1 where the bend is not felt.
 */
export function laminarBendFactor(reynolds: number, boreOverBend: number): number {
  const dean = reynolds * Math.sqrt(boreOverBend);
  return dean <= LEAST_DEAN ? 1 : 1 / (1 - (1 - (LEAST_DEAN / dean) ** 0.45) ** (1 / 0.45));
}
