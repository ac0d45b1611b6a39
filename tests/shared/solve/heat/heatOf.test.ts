import { describe, expect, it } from 'vitest';
import { add, type Vec3 } from '../../../../shared/base/vec3.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import { Heat } from '../../../../shared/document/lay/heat.ts';
import type { Lay } from '../../../../shared/document/lay/schema.ts';
import type { Bay, Project } from '../../../../shared/document/project/schema.ts';
import { skinOfPart } from '../../../../shared/document/project/skinOfPart.ts';
import { type BayIndex, buildBayIndex } from '../../../../shared/solve/bay/bayIndex.ts';
import { blackExitanceWPerM2 } from '../../../../shared/solve/heat/exitance.ts';
import { heatOf } from '../../../../shared/solve/heat/heatOf.ts';
import { layAlong, straightLay } from '../../../arbitraries/lays.ts';
import { sampleHose, sampleProject, sampleRun, sampleSleeve } from '../../../arbitraries/projects.ts';
import { block, meshOfTriangles, plate, type Triangle } from '../../../arbitraries/triangles.ts';
import { resolved } from '../checks/context.ts';

const HOT: Vec3 = [250, 0, -100];
/** A hot plate 300 x 200 mm under the middle of the straight lay, 100 mm below its axis. */
const HOT_PLATE = plate(HOT, [150, 0, 0], [0, 100, 0]);
const STATED = { airTemperatureC: 50, airSpeedMPerS: 2, soakAirTemperatureC: 70 };

function bayOf(parts: Record<string, readonly Triangle[]>, hot: Partial<Bay['skins'][number]> = {}) {
  const bay: Bay = { ...sampleProject().bay, ...STATED };
  const skins = bay.skins.map((s) => (s.kind === 'hot' ? { ...s, ...hot } : s));
  const project: Project = sampleProject({ bay: { ...bay, skins } });
  const index = buildBayIndex(meshOfTriangles(parts), (part) => skinOfPart(project, part), UNWATCHED);
  return { project, index };
}

function heat(bay: { project: Project; index: BayIndex }, lay: Lay = straightLay(), hose = {}, run = {}): Heat {
  const project = resolved({ bay: bay.project.bay, runs: [sampleRun(run)] }, { hoses: [sampleHose(hose)] });
  const answer = heatOf(project.runs[0]!, lay, bay.index, bay.project.bay);
  if (answer === undefined) throw new Error('no heat');
  return answer;
}

const most = (values: readonly number[]): number => Math.max(...values);

it('answers in the shape of the report, hottest over the plate, and by name', () => {
  const answer = heat(bayOf({ exhaust: HOT_PLATE }));
  expect(Heat.safeParse(answer).error).toBeUndefined();
  expect(answer.arcLengthMm[0]).toBeCloseTo(20, 6);
  expect(answer.arcLengthMm.at(-1)).toBeCloseTo(480, 6);
  expect(Math.abs(answer.running.hottest.at.arcLengthMm - 250)).toBeLessThan(70);
  expect(answer.sources.map((s) => s.from)).toEqual([{ kind: 'skin', id: 'exhaust', part: 'exhaust' }]);
  expect(answer.sources[0]?.share).toBe(1);
  for (const track of [answer.running.liner, answer.running.cover, answer.soak.liner, answer.soak.cover])
    track.likely.forEach((value, i) => {
      expect(track.low[i]!).toBeLessThanOrEqual(value);
      expect(track.high[i]!).toBeGreaterThanOrEqual(value);
    });
});

it('sees what the closed form says: a very long hose over a very long plate, half of all it sees', () => {
  // An infinite cylinder to an infinite strip, half width w at distance h: F = atan(w / h) / pi.
  const wide = plate([250, 0, -100], [20_000, 0, 0], [0, 300, 0]);
  const answer = heat(bayOf({ exhaust: wide }, { emissivity: 1 }));
  const expected = (Math.atan(3) / Math.PI) * blackExitanceWPerM2(600);
  answer.radiationWPerM2.forEach((flux, i) => {
    expect(Math.abs(flux - expected)).toBeLessThan(4 * answer.radiationErrorWPerM2[i]!);
  });
});

it('takes no direct heat through a plate between, and some past a small one', () => {
  const open = heat(bayOf({ exhaust: HOT_PLATE }));
  const shield = plate([250, 0, -50], [2000, 0, 0], [0, 2000, 0]);
  const shut = heat(bayOf({ exhaust: HOT_PLATE, shield }));
  expect(most(shut.radiationWPerM2)).toBe(0);
  expect(shut.sources).toEqual([]);
  const small = heat(bayOf({ exhaust: HOT_PLATE, shield: plate([250, 0, -50], [40, 0, 0], [0, 40, 0]) }));
  expect(most(small.radiationWPerM2)).toBeGreaterThan(0);
  expect(most(small.radiationWPerM2)).toBeLessThan(most(open.radiationWPerM2));
  expect(most(shut.running.cover.likely)).toBeLessThan(most(open.running.cover.likely));
});

describe('warms as it should', () => {
  const cover = (answer: Heat): number => answer.running.hottest.cover.likely;
  const plain = heat(bayOf({ exhaust: HOT_PLATE }));

  it('with the skin, its emissivity and its nearness', () => {
    expect(cover(heat(bayOf({ exhaust: HOT_PLATE }, { surfaceTemperatureC: 700 })))).toBeGreaterThan(cover(plain));
    expect(cover(heat(bayOf({ exhaust: HOT_PLATE }, { emissivity: 0.4 })))).toBeLessThan(cover(plain));
    const nearer = HOT_PLATE.map((t) => t.map((p) => add(p, [0, 0, 40])) as unknown as Triangle);
    expect(cover(heat(bayOf({ exhaust: nearer })))).toBeGreaterThan(cover(plain));
  });

  it('less under steel braid than under cloth, and the hose less in a sleeve', () => {
    expect(cover(heat(bayOf({ exhaust: HOT_PLATE }), straightLay(), { cover: 'polyester-braid' }))).toBeGreaterThan(
      cover(plain),
    );
    const bay = bayOf({ exhaust: HOT_PLATE });
    const project = resolved(
      { bay: bay.project.bay, runs: [sampleRun({ sleeve: 'sleeve-16' })] },
      { hoses: [sampleHose({ cover: 'polyester-braid' })], sleeves: [sampleSleeve()] },
    );
    const sleeved = heatOf(project.runs[0]!, straightLay({ outsideDiameterMm: 22 }), bay.index, bay.project.bay)!;
    const bare = heat(bay, straightLay(), { cover: 'polyester-braid' });
    expect(cover(sleeved)).toBeLessThan(cover(bare));
    expect(sleeved.running.hottest.sleeve!.likely).toBeGreaterThan(cover(sleeved));
    expect(bare.running.sleeve).toBeUndefined();
  });

  it('more in hot soak: nothing takes the heat away', () => {
    expect(plain.soak.hottest.cover.likely).toBeGreaterThan(cover(plain));
    expect(plain.soak.hottest.liner.likely).toBeGreaterThan(plain.running.hottest.liner.likely);
  });

  it('at the liner by the fluid: much flow holds it there', () => {
    const service = { purpose: 'oil-cooler', fluid: 'coolant', pressureKpa: 100, temperatureC: 90 } as const;
    const fast = heat(bayOf({ exhaust: HOT_PLATE }), straightLay(), {}, { service: { ...service, flowLPerMin: 40 } });
    const slow = heat(bayOf({ exhaust: HOT_PLATE }), straightLay(), {}, { service });
    expect(fast.running.hottest.liner.likely - 90).toBeLessThan(2);
    expect(slow.running.hottest.liner.likely).toBeGreaterThan(fast.running.hottest.liner.likely);
  });
});

it('knows a bay without a hot skin not at all', () => {
  const bay = bayOf({ tub: HOT_PLATE });
  const project = resolved({ bay: bay.project.bay });
  expect(heatOf(project.runs[0]!, straightLay(), bay.index, bay.project.bay)).toBeUndefined();
});

it('comes out at the air between air and fluid where nothing hot is seen', () => {
  const behind = bayOf({
    exhaust: HOT_PLATE,
    wall: block(
      [250, 0, -100],
      [
        [400, 0, 0],
        [0, 400, 0],
        [0, 0, 60],
      ],
    ),
  });
  const { running } = heat(behind);
  for (const value of running.cover.likely) {
    expect(value).toBeGreaterThan(50);
    expect(value).toBeLessThan(120);
  }
});

it('is the same when the bay and the hose are turned together, within what the rays are good for', () => {
  const turn = ([x, y, z]: Vec3): Vec3 => [z + 40, x - 7, y + 11];
  const parts = { exhaust: HOT_PLATE, bracket: plate([200, 0, -40], [30, 0, 0], [0, 8, 0]) };
  const turned = Object.fromEntries(
    Object.entries(parts).map(([name, ts]) => [name, ts.map((t) => t.map(turn) as unknown as Triangle)]),
  );
  const here = heat(bayOf(parts));
  const there = heat(bayOf(turned), layAlong([turn([0, 0, 0]), turn([500, 0, 0])]));
  here.radiationWPerM2.forEach((flux, i) => {
    const error = Math.hypot(here.radiationErrorWPerM2[i]!, there.radiationErrorWPerM2[i]!);
    expect(Math.abs(flux - there.radiationWPerM2[i]!)).toBeLessThan(4 * error);
  });
  expect(Math.abs(here.running.hottest.cover.likely - there.running.hottest.cover.likely)).toBeLessThan(6);
});

it('answers the same twice', () => {
  const bay = bayOf({ exhaust: HOT_PLATE });
  expect(heat(bay)).toEqual(heat(bay));
});
