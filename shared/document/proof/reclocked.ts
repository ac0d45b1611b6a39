import type { AsBuilt } from '../project/schema.ts';

/** deg. Two notes of one clock that agree to this are the same clock: what a file's decimals leave. */
const SAME_CLOCK_DEG = 1e-6;

/** deg, 0 to 180. How far apart two clocks are, either way round. */
export function clocksApartDeg(oneDeg: number, otherDeg: number): number {
  const apart = Math.abs(oneDeg - otherDeg) % 360;
  return Math.min(apart, 360 - apart);
}

/** The clock that a hose was proof-tested with, where that is written down; undefined = not tested, or not written down. deg. */
export function provedClockDeg(built: AsBuilt | undefined): number | undefined {
  return built?.proof === undefined ? undefined : (built.proof.clockDeg ?? built.clockDeg);
}

/**
 * Why a hose is not given another clock, in a sentence; undefined where nothing is against it: it is not proof-tested, its clock is not
 * written down yet, or it is the same. Source: MIL-DTL-8790F 3.5.3.
 */
export function clockRefusal(built: AsBuilt | undefined, wantedDeg: number): string | undefined {
  const provedDeg = provedClockDeg(built);
  if (built?.proof === undefined || provedDeg === undefined) return undefined;
  if (clocksApartDeg(provedDeg, wantedDeg) <= SAME_CLOCK_DEG) return undefined;
  return `This hose was proof-tested on ${built.proof.on} with its clock at ${shown(provedDeg)} degrees: it is not clocked again, to ${shown(wantedDeg)} or any other. An end turned after its proof is not proven; where the clock has to be another, a new hose is made and tested.`;
}

function shown(deg: number): string {
  return String(Math.round(deg * 10) / 10);
}

/**
 * What the bench measured, with a change to it, or why that change is refused. A proof test that is written down keeps the clock as it
 * then was: plannedDeg is that of the plan, for a hose made to it. Taking the proof test itself back, as a slip of the pen, frees the clock.
 */
export function withMeasured(
  built: AsBuilt | undefined,
  change: Partial<AsBuilt>,
  plannedDeg?: number,
): { readonly built: AsBuilt } | { readonly refused: string } {
  const refused = change.clockDeg === undefined ? undefined : clockRefusal(built, change.clockDeg);
  if (refused !== undefined) return { refused };
  const next: AsBuilt = { ...built, ...change };
  const clockDeg = next.clockDeg ?? plannedDeg;
  if (next.proof === undefined || next.proof.clockDeg !== undefined || clockDeg === undefined) return { built: next };
  return { built: { ...next, proof: { ...next.proof, clockDeg } } };
}
