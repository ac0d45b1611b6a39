import { expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { blackExitanceWPerM2 } from '../../../../shared/solve/heat/exitance.ts';
import { hoseLayers, shellResistance } from '../../../../shared/solve/heat/hoseLayers.ts';
import { evenRing, type Ring, type RingLoad, ringBalance, solveRing } from '../../../../shared/solve/heat/hoseRing.ts';
import { sampleHose, sampleSleeve } from '../../../arbitraries/projects.ts';

function ring(changes: Partial<Ring> = {}): Ring {
  return {
    sectors: 6,
    outsideDiameterMm: 16,
    emissivity: 0.9,
    wallWPerMK: 3,
    filmWPerMK: 5,
    besideOuterWPerMK: 0.1,
    besideInnerWPerMK: 0.05,
    storedJPerMK: { outer: 100, inner: 100, fluid: 200 },
    ...changes,
  };
}
const AIR = { temperatureC: 60, speedMPerS: 1 };

// published-values 6.3, sigma T^4 in kW/m2.
it.each([
  [100, 1.0994],
  [200, 2.8419],
  [232, 3.6923],
  [300, 6.1191],
  [400, 11.6428],
  [500, 20.2613],
  [600, 32.9585],
  [700, 50.8547],
  [800, 75.2062],
  [900, 107.4054],
])('radiates at %d deg C as the table has it', (temperatureC, kwPerM2) => {
  expect(blackExitanceWPerM2(temperatureC) / 1000).toBeCloseTo(kwPerM2, 4);
});

it('closes the balance of heat to 0.1 % and far below, in any bay', () => {
  const random = seededRandom(5);
  for (let trial = 0; trial < 200; trial++) {
    const one = ring({
      emissivity: 0.1 + 0.9 * random(),
      wallWPerMK: 0.3 + 10 * random(),
      filmWPerMK: 0.1 + 100 * random(),
      besideOuterWPerMK: random(),
      besideInnerWPerMK: random(),
    });
    const load: RingLoad = {
      incomingWPerM2: Float64Array.from({ length: 6 }, () => 500 + 30_000 * random() ** 2),
      air: { temperatureC: 20 + 100 * random(), speedMPerS: random() < 0.3 ? 0 : 5 * random() },
      ...(random() < 0.7 ? { fluidC: 20 + 120 * random() } : {}),
    };
    const balance = ringBalance(one, load, solveRing(one, load, evenRing(6, 80)));
    expect(Math.abs(balance.off) / balance.takenIn).toBeLessThan(1e-5);
    if (load.fluidC === undefined) expect(Math.abs(balance.toFluid) / balance.takenIn).toBeLessThan(1e-5);
  }
});

it('closes it over a step in time too, with what hose and fluid store', () => {
  const load: RingLoad = { incomingWPerM2: [9000, 5000, 800, 800, 800, 5000], air: AIR };
  const step = { from: evenRing(6, 100), seconds: 20 };
  const after = solveRing(ring(), load, step.from, step);
  const balance = ringBalance(ring(), load, after, step);
  expect(Math.abs(balance.off) / balance.takenIn).toBeLessThan(1e-5);
  expect(balance.toFluid).toBeCloseTo((200 * (after[12]! - 100)) / 20, 3);
  expect(balance.stored).toBeGreaterThan(0);
});

it('comes from any start by steps in time to where the steady balance is', () => {
  const load: RingLoad = { incomingWPerM2: [9000, 5000, 800, 800, 800, 5000], air: AIR };
  const steady = solveRing(ring(), load, evenRing(6, 80));
  let state = evenRing(6, 20);
  for (let i = 0; i < 400; i++) state = solveRing(ring(), load, state, { from: state, seconds: 60 });
  for (let i = 0; i < state.length; i++) expect(state[i]!).toBeCloseTo(steady[i]!, 2);
});

it('is at rest where all is of one temperature', () => {
  const load: RingLoad = {
    incomingWPerM2: Float64Array.from({ length: 6 }, () => blackExitanceWPerM2(90)),
    air: { temperatureC: 90, speedMPerS: 1 },
    fluidC: 90,
  };
  for (const value of solveRing(ring(), load, evenRing(6, 20))) expect(value).toBeCloseTo(90, 3);
});

it('answers a pipe of concentric layers as the closed form', () => {
  // No radiation: q = (fluid - air) / (1/film + wall + 1/(h pi D)), the series of resistances.
  const one = ring({ emissivity: 1e-9, sectors: 1 });
  const load: RingLoad = { incomingWPerM2: [0], air: AIR, fluidC: 130 };
  const [outer, liner] = solveRing(one, load, evenRing(1, 100));
  const balance = ringBalance(one, load, Float64Array.of(outer!, liner!, 130));
  const airR = (outer! - 60) / balance.toAir;
  const q = (130 - 60) / (1 / 5 + 1 / 3 + airR);
  expect(outer!).toBeCloseTo(60 + q * airR, 3);
  expect(liner!).toBeCloseTo(130 - q / 5, 3);
});

it('sums the shells of a hose: logarithms in closed form, in any order of cutting', () => {
  expect(shellResistance(10, 20, 0.25)).toBeCloseTo(Math.log(2) / (2 * Math.PI * 0.25), 12);
  expect(shellResistance(10, 14, 0.3) + shellResistance(14, 20, 0.3)).toBeCloseTo(shellResistance(10, 20, 0.3), 12);
  const hose = sampleHose({ cover: 'rubber', core: 'nbr' });
  // Core and cover of one stuff are one shell.
  expect(1 / hoseLayers(hose, undefined).wallWPerMK).toBeCloseTo(shellResistance(10.3, 15.8, 0.22), 12);
});

it('keeps heat off the cover with a sleeve, more with an air gap than tight', () => {
  const bare = hoseLayers(sampleHose(), undefined);
  const tight = hoseLayers(sampleHose(), sampleSleeve({ insideDiameterMm: 15.8, outsideDiameterMm: 21.8 }));
  const loose = hoseLayers(sampleHose(), sampleSleeve({ insideDiameterMm: 19.8, outsideDiameterMm: 25.8 }));
  expect(bare.overCover).toBe(0);
  expect(tight.wallWPerMK).toBeLessThan(bare.wallWPerMK);
  expect(loose.wallWPerMK).toBeLessThan(tight.wallWPerMK);
  expect(tight.overCover).toBeGreaterThan(0.5);
});
