import { expect, it } from 'vitest';
import { airFilmWPerM2K, airState, crossFlowNusselt, stillAirNusselt } from '../../../../shared/solve/heat/airFilm.ts';
import { pipeNusselt } from '../../../../shared/solve/heat/fluidFilm.ts';

// Table of air at one atmosphere in Incropera's textbook, from memory: 300 K and 350 K.
it('knows air as the textbook tables it', () => {
  expect(airState(26.85).viscosityM2PerS * 1e6).toBeCloseTo(15.89, 0);
  expect(airState(26.85).conductivityWPerMK).toBeCloseTo(0.0263, 3);
  expect(airState(76.85).viscosityM2PerS * 1e6).toBeCloseTo(20.92, 0);
  expect(airState(76.85).conductivityWPerMK).toBeCloseTo(0.03, 3);
  expect(airState(76.85).prandtl).toBeCloseTo(0.7, 1);
});

// Incropera, example of a cylinder of 12.7 mm in air at 10 m/s (Re 6071, Pr 0.70): 40.6. From memory.
it('cools a cylinder across an air stream as the worked example', () => {
  expect(crossFlowNusselt(6071, 0.7)).toBeCloseTo(40.6, 1);
});

// Morgan's own fit of measured cylinders, 0.48 Ra^0.25 from 1e4 to 1e7 (from memory), is another hand's.
it.each([1e4, 1e5, 1e6, 1e7])('cools a level cylinder in still air as other measurements, Ra %d', (rayleigh) => {
  expect(Math.abs(stillAirNusselt(rayleigh, 0.7) / (0.48 * rayleigh ** 0.25) - 1)).toBeLessThan(0.15);
});

// By hand: Ra^(1/6) = 13.108, (1 + (0.559/0.697)^(9/16))^(8/27) = 1.2064, (0.6 + 0.387 * 13.108 / 1.2064)^2 = 23.09.
it('is the published form in still air, worked by hand', () => {
  expect(stillAirNusselt(5.073e6, 0.697)).toBeCloseTo(23.09, 1);
});

it('cools more the faster the air, and never less than still air', () => {
  const films = [0, 0.3, 1, 3, 10].map((speedMPerS) => airFilmWPerM2K(16, 150, { temperatureC: 60, speedMPerS }));
  expect(films).toEqual(films.toSorted((a, b) => a - b));
  expect(new Set(films).size).toBe(5);
});

it('fills a pipe: laminar 3.657, and turbulent about as Dittus and Boelter have it', () => {
  expect(pipeNusselt(500, 100)).toBe(3.657);
  const dittusBoelter = 0.023 * 50_000 ** 0.8 * 5 ** 0.4;
  expect(Math.abs(pipeNusselt(50_000, 5) / dittusBoelter - 1)).toBeLessThan(0.2);
  expect(pipeNusselt(3000, 10)).toBeGreaterThan(pipeNusselt(2300, 10));
  expect(pipeNusselt(4001, 10)).toBeGreaterThan(pipeNusselt(3999, 10));
});
