import { describe, expect, it } from 'vitest';
import { bendExcess, squareBendLoss } from '../../../../shared/solve/flow/bendLoss.ts';
import { corrugatedFactor, corrugationLoss } from '../../../../shared/solve/flow/corrugatedLoss.ts';
import { colebrook, darcyFactor } from '../../../../shared/solve/flow/darcyFactor.ts';
import { gravityFlowLPerMin } from '../../../../shared/solve/flow/drainFlow.ts';

describe("Colebrook's factor", () => {
  it('is the anchor value to 1e-12 (Re 1e5, e/D 1e-4: 0.018513866077471648, friction tests of an open fluids library)', () => {
    expect(Math.abs(colebrook(1e5, 1e-4) / 0.018513866077471648 - 1)).toBeLessThan(1e-12);
  });

  // Published values 5.1, computed by an independent iteration, six digits.
  it.each([
    [4000, 0, 0.039907],
    [4000, 5e-2, 0.076987],
    [30000, 1e-3, 0.02597],
    [1e6, 1e-5, 0.01187],
    [1e7, 0, 0.008103],
    [1e7, 1e-2, 0.03791],
  ])('Re %d, e/D %d: %d', (reynolds, rough, factor) => {
    expect(colebrook(reynolds, rough)).toBeCloseTo(factor, 6);
  });

  it('takes the dearer where the flow may be either', () => {
    expect(darcyFactor(2299, 0)).toBe(64 / 2299);
    expect(darcyFactor(3000, 0)).toBe(colebrook(3000, 0));
    expect(darcyFactor(3000, 0)).toBeGreaterThan(64 / 3000);
  });
});

describe("Crane's bends (TP-410M table)", () => {
  it.each([
    [1, 20],
    [3, 12],
    [6, 17],
    [20, 50],
  ])('radius %d bores: %d times the friction factor', (radius, times) => {
    expect(squareBendLoss(radius, 1)).toBeCloseTo(times, 9);
  });

  it('lies on the line between rows, and excess is what the own length does not have', () => {
    expect(squareBendLoss(7, 1)).toBeCloseTo((17 + 24) / 2, 9);
    expect(bendExcess(Math.PI / 2, 10, 0.02)).toBeCloseTo(0.02 * (30 - 5 * Math.PI), 9);
    expect(bendExcess(Math.PI / 4, 10, 0.02)).toBeCloseTo(0.01 * (30 - 5 * Math.PI), 9);
    expect(bendExcess(1, 30, 0.02)).toBe(0);
  });
});

// Hawthorne 1963 as computed in the published values 5.7.
it.each([
  [8, 0.01023, 0.0818],
  [5, 0.0239, 0.1195],
  [4, 0.03521, 0.1408],
])('corrugated hose with %d pitches in its bore', (perBore, loss, factor) => {
  expect(corrugationLoss(1 / perBore)).toBeCloseTo(loss, 5);
  expect(corrugatedFactor(1 / perBore)).toBeCloseTo(factor, 4);
});

describe('flow by fall alone', () => {
  it('laminar is Hagen and Poiseuille: pi g sin D^4 / (128 nu)', () => {
    // 12 mm, 5 degrees, 60 cSt: closed form in m3/s, then L/min.
    const sine = Math.sin((5 * Math.PI) / 180);
    const closed = ((Math.PI * 9.80665 * sine * 0.012 ** 4) / (128 * 60e-6)) * 6e4;
    expect(gravityFlowLPerMin(12, sine, 60, 0.0015)).toBeCloseTo(closed, 9);
  });

  it('in a corrugated bore is by its own factor where that is the greater: sqrt(2 g sin D / f)', () => {
    // 16 mm at 45 degrees, five pitches in the bore: f 0.1195 (Hawthorne, published values 5.7).
    const sine = Math.SQRT1_2;
    const speed = Math.sqrt((2 * 9.80665 * sine * 0.016) / 0.1195);
    const closed = speed * (Math.PI / 4) * 0.016 ** 2 * 6e4;
    expect(gravityFlowLPerMin(16, sine, 5, 0.0015, 0.1195)).toBeCloseTo(closed, 6);
    // Thick oil on a slight fall creeps, and corrugations add nothing.
    expect(gravityFlowLPerMin(12, 0.05, 60, 0.0015, 0.1195)).toBe(gravityFlowLPerMin(12, 0.05, 60, 0.0015));
  });
});
