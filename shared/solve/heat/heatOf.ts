import { UNWATCHED, type Watch } from '../../base/watch.ts';
import type { Heat, HeatBand, HeatSource, HeatState, HeatTrack } from '../../document/lay/heat.ts';
import type { Lay, Place } from '../../document/lay/schema.ts';
import type { ResolvedRun } from '../../document/project/resolve.ts';
import type { Bay } from '../../document/project/schema.ts';
import { partOfTriangle } from '../../geometry/triMesh.ts';
import type { BayIndex } from '../bay/bayIndex.ts';
import { blackExitanceWPerM2 } from './exitance.ts';
import { heatBasis } from './heatBasis.ts';
import { type HeatCase, heatCases } from './heatCase.ts';
import { lookOut, shareOf } from './lookOut.ts';
import { mixOf, type PlaceHeat, type PlaceStates, placeHeat } from './placeHeat.ts';
import {
  type HotBay,
  type HotSight,
  heatPlaces,
  hotBay,
  hotTemperatureC,
  RAYS_A_SECTOR,
  radiationAlong,
  raysOfPlace,
  SECTORS,
} from './radiationAlong.ts';

/**
 * How hot a laid hose gets along its length, running and in hot soak: radiation from the hot skins by rays with the whole
 * bay between, air round the hose, the fluid inside, and the wall with its sleeve as layers, balanced at every place by
 * itself (`hoseRing`). undefined in a bay without a hot skin, which says nothing of heat. An estimate: its band holds what
 * was assumed at its hot and at its cool edge, and two standard errors of the rays; what is stated is taken as exact.
 */
export function heatOf(
  run: ResolvedRun,
  lay: Lay,
  bay: BayIndex,
  stated: Bay,
  watch: Watch = UNWATCHED,
  raysASector = RAYS_A_SECTOR,
): Heat | undefined {
  const seen = hotBay(bay);
  if (seen.hot.length === 0 || lay.centreline.points.length < 2) return undefined;
  const places = heatPlaces(lay);
  const sights = radiationAlong(lay, places, seen, raysASector, watch);
  const cases = heatCases(run, stated);
  const likely = cases[0] as HeatCase;
  const answers = cases.map((one) => statesAlong(one, seen, sights, raysASector));
  const sleeved = run.sleeve !== undefined;
  const running = stateOf(answers, 'running', places, sleeved);
  const { at } = running.hottest;
  return {
    arcLengthMm: places.map((place) => place.arcLengthMm),
    ...radiation(likely, seen, sights, raysASector),
    raysPerPlace: raysASector * SECTORS,
    linerLimitC: run.hose.maxTemperatureC,
    running,
    soak: stateOf(answers, 'soak', places, sleeved),
    sources: sourcesAt(likely, lay, bay, seen, { at, number: places.indexOf(at), raysASector }),
    basis: heatBasis(run, stated, seen),
  };
}

/** Places that see nothing hot are all alike, and solved once. */
function statesAlong(one: HeatCase, { hot }: HotBay, sights: readonly HotSight[], rays: number): PlaceStates[] {
  const skins = hot.map(({ skin }) => skin);
  const mix = mixOf(sights, skins.length);
  let shaded: PlaceStates | undefined;
  return sights.map((sight) => {
    if (sight.some((hits) => hits > 0)) return placeHeat(one, skins, sight, mix, rays);
    shaded ??= placeHeat(one, skins, sight, mix, rays);
    return shaded;
  });
}

type Layer = keyof PlaceHeat;

function stateOf(
  answers: readonly (readonly PlaceStates[])[],
  when: keyof PlaceStates,
  places: readonly Place[],
  sleeved: boolean,
): HeatState {
  const track = (layer: Layer): HeatTrack => trackOf(answers, when, layer);
  const tracks = { liner: track('liner'), cover: track('cover'), ...(sleeved ? { sleeve: track('outside') } : {}) };
  const i = tracks.cover.likely.indexOf(Math.max(...tracks.cover.likely));
  const bandAt = ({ low, likely, high }: HeatTrack): HeatBand => ({
    low: low[i] ?? 0,
    likely: likely[i] ?? 0,
    high: high[i] ?? 0,
  });
  return {
    ...tracks,
    hottest: {
      at: places[i] as Place,
      liner: bandAt(tracks.liner),
      cover: bandAt(tracks.cover),
      ...(tracks.sleeve === undefined ? {} : { sleeve: bandAt(tracks.sleeve) }),
    },
  };
}

/** The likely case and the least and greatest of all cases, place by place. */
function trackOf(answers: readonly (readonly PlaceStates[])[], when: keyof PlaceStates, layer: Layer): HeatTrack {
  const values = answers.map((states) => states.map((state) => state[when][layer]));
  const edge = (pick: (...of: number[]) => number): number[] =>
    (values[0] ?? []).map((_, i) => pick(...values.map((of) => of[i] ?? 0)));
  return { low: edge(Math.min), likely: values[0] ?? [], high: edge(Math.max) };
}

/** W/m2 that hot skins send onto the hose, on average round it, with one standard error of the rays. */
function radiation(
  one: HeatCase,
  { hot }: HotBay,
  sights: readonly HotSight[],
  raysASector: number,
): Pick<Heat, 'radiationWPerM2' | 'radiationErrorWPerM2'> {
  const rays = SECTORS * raysASector;
  const exitance = hot.map(({ skin }) => one.emissivityOf(skin) * blackExitanceWPerM2(hotTemperatureC(skin) ?? 0));
  const known = sights.map((sight) => {
    const sums = sight.reduce(
      (sum, hits, i) => {
        const each = exitance[i % hot.length] ?? 0;
        return { hits: sum.hits + hits, flux: sum.flux + hits * each };
      },
      { hits: 0, flux: 0 },
    );
    const each = sums.hits > 0 ? sums.flux / sums.hits : 0;
    return { flux: sums.flux / rays, error: each * shareOf(sums.hits, rays).error };
  });
  return {
    radiationWPerM2: known.map(({ flux }) => flux),
    radiationErrorWPerM2: known.map(({ error }) => error),
  };
}

interface Sighting {
  readonly at: Place;
  readonly number: number;
  readonly raysASector: number;
}

/** Which parts of the bay heat a place, by the same rays. */
function sourcesAt(
  one: HeatCase,
  lay: Lay,
  bay: BayIndex,
  { hot, shading }: HotBay,
  { at, number, raysASector }: Sighting,
): HeatSource[] {
  const count = SECTORS * raysASector;
  const byPart = new Map<string, { id: string; part: string; wPerM2: number }>();
  const bvhs = (skins: HotBay['hot']) => skins.map(({ bvh }) => bvh);
  lookOut(bvhs(hot), bvhs(shading), raysOfPlace(lay, at, number).source, count, (_, target, triangle) => {
    const skin = hot[target]?.skin;
    if (skin === undefined) return;
    const part = partOfTriangle(bay.mesh, triangle).name;
    const known = byPart.get(part) ?? { id: skin.id, part, wPerM2: 0 };
    known.wPerM2 += (one.emissivityOf(skin) * blackExitanceWPerM2(hotTemperatureC(skin) ?? 0)) / count;
    byPart.set(part, known);
  });
  const all = [...byPart.values()].sort((a, b) => b.wPerM2 - a.wPerM2 || a.part.localeCompare(b.part));
  const total = all.reduce((sum, { wPerM2 }) => sum + wPerM2, 0);
  return all.map(({ id, part, wPerM2 }) => ({ from: { kind: 'skin', id, part }, share: wPerM2 / total, wPerM2 }));
}
