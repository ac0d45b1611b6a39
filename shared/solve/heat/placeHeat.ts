import type { Skin } from '../../document/project/schema.ts';
import { blackExitanceWPerM2 } from './exitance.ts';
import type { HeatCase } from './heatCase.ts';
import { evenRing, type Ring, type RingLoad, type RingState, solveRing } from './hoseRing.ts';
import { shareOf } from './lookOut.ts';
import { type HotSight, hotTemperatureC, SECTORS } from './radiationAlong.ts';

/** s. Of hot soak: how long it is followed, and its steps; a hose's own time is minutes. */
const SOAK_S = 2400;
const SOAK_STEP_S = 40;

/** deg C at one place: the hottest side of each layer. */
export interface PlaceHeat {
  readonly liner: number;
  readonly cover: number;
  /** of hose or sleeve */
  readonly outside: number;
}

/** Running and in hot soak, of one place in one case. */
export interface PlaceStates {
  readonly running: PlaceHeat;
  readonly soak: PlaceHeat;
}

/**
 * One place of a hose, from what it sees of the hot skins: steady while it runs; then the engine is off, nothing flows, the
 * air stands, the skins cool as by Newton's law, and the hottest that each layer gets in 40 minutes is kept (liner, cover
 * and outside may each have their own time). mix: as `mixOf` the whole hose.
 */
export function placeHeat(
  one: HeatCase,
  skins: readonly Skin[],
  sight: HotSight,
  mix: ArrayLike<number>,
  raysASector: number,
): PlaceStates {
  const shares = sharesOf(sight, mix, raysASector, one.errors);
  const load: RingLoad = {
    incomingWPerM2: incoming(one, skins, shares, one.air.temperatureC, hotTemperature),
    air: one.air,
    fluidC: one.fluidC,
  };
  const steady = solveRing(one.ring, load, evenRing(SECTORS, one.air.temperatureC, one.fluidC));
  return { running: hottestOf(one, steady), soak: soaked(one, skins, shares, steady) };
}

function soaked(one: HeatCase, skins: readonly Skin[], shares: Float64Array, steady: RingState): PlaceHeat {
  const airC = one.soakAir.temperatureC;
  let state = steady;
  let most = hottestOf(one, steady);
  for (let at = SOAK_STEP_S; at <= SOAK_S; at += SOAK_STEP_S) {
    const left = Math.exp(-at / one.coolingS);
    const skinC = (skin: Skin): number => airC + (hotTemperature(skin) - airC) * left;
    const load: RingLoad = { incomingWPerM2: incoming(one, skins, shares, airC, skinC), air: one.soakAir };
    const before = state;
    state = solveRing(one.soakRing, load, before, { from: before, seconds: SOAK_STEP_S });
    most = warmer(most, hottestOf(one, state));
    if (cools(state, before)) break;
  }
  return most;
}

/** Whether no node is warmer than a step before: with skins that only cool, none will be again. */
function cools(state: RingState, before: RingState): boolean {
  return state.every((value, i) => value <= (before[i] ?? value));
}

function warmer(a: PlaceHeat, b: PlaceHeat): PlaceHeat {
  return {
    liner: Math.max(a.liner, b.liner),
    cover: Math.max(a.cover, b.cover),
    outside: Math.max(a.outside, b.outside),
  };
}

function hotTemperature(skin: Skin): number {
  return hotTemperatureC(skin) ?? 0;
}

/**
 * Which share of each side's view each skin has, the rays' error added so many times. A side that saw nothing may have
 * missed something: it is taken as `mix`, what the whole hose saw. Sides are filled by chance a little more or less than evenly.
 */
function sharesOf(sight: HotSight, mix: ArrayLike<number>, raysASector: number, errors: number): Float64Array {
  const skins = mix.length;
  const shares = new Float64Array(sight.length);
  for (let sector = 0; sector < SECTORS; sector++) {
    const own = sight.subarray(sector * skins, (sector + 1) * skins);
    const hits = own.reduce((a, b) => a + b, 0);
    const { share, error } = shareOf(hits, raysASector);
    const wanted = Math.min(1, Math.max(0, share + errors * error));
    for (let s = 0; s < skins; s++) shares[sector * skins + s] = wanted * (hits > 0 ? own[s]! / hits : mix[s]!);
  }
  return shares;
}

/** Which share each hot skin has of all that a hose saw of them; nothing where it saw none. */
export function mixOf(sights: readonly HotSight[], skins: number): Float64Array {
  const mix = new Float64Array(skins);
  for (const sight of sights) for (let i = 0; i < sight.length; i++) mix[i % skins]! += sight[i]!;
  const total = mix.reduce((a, b) => a + b, 0);
  return total > 0 ? mix.map((hits) => hits / total) : mix;
}

/** W/m2 on each side: hot skins as grey ones that reflect the air's temperature, all else as black at the air's. */
function incoming(
  one: HeatCase,
  skins: readonly Skin[],
  shares: Float64Array,
  airC: number,
  temperatureC: (skin: Skin) => number,
): Float64Array {
  const air = blackExitanceWPerM2(airC);
  const above = skins.map((skin) => one.emissivityOf(skin) * (blackExitanceWPerM2(temperatureC(skin)) - air));
  return Float64Array.from({ length: SECTORS }, (_, sector) =>
    above.reduce((sum, more, s) => sum + shares[sector * skins.length + s]! * more, air),
  );
}

function hottestOf({ ring, overCover }: { ring: Ring; overCover: number }, state: RingState): PlaceHeat {
  let [liner, cover, outside] = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < ring.sectors; i++) {
    const out = state[i]!;
    const inner = state[ring.sectors + i]!;
    liner = Math.max(liner, inner);
    outside = Math.max(outside, out);
    cover = Math.max(cover, out + overCover * (inner - out));
  }
  return { liner, cover, outside };
}
