import { describe, expect, it } from 'vitest';
import { inchesToMm } from '../../../../shared/base/units.ts';
import { bendExcess, squareBendLoss } from '../../../../shared/solve/flow/bendLoss.ts';
import { corrugatedFactor, corrugationLoss } from '../../../../shared/solve/flow/corrugatedLoss.ts';
import { colebrook, darcyFactor, laminarBendFactor, laminarFactor } from '../../../../shared/solve/flow/darcyFactor.ts';
import { gravityFlowLPerMin } from '../../../../shared/solve/flow/drainFlow.ts';
import { manningShare, partFull } from '../../../../shared/solve/flow/partFull.ts';

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

  // Worked examples: EdM44 hydraulics README (1, 2, 3) and Crane TP-410 7.13; the printed factor has three digits.
  it.each([
    [248625, 0.0005 / (20 / 12), 0.0173],
    [1010337, 0.046 / 500, 0.0133],
    [2336974, 0.0008 / 1.85, 0.0164],
  ])('worked example at Re %d', (reynolds, rough, factor) => {
    expect(Math.abs(colebrook(reynolds, rough) - factor)).toBeLessThan(5.1e-5);
  });

  it('type 1 of the worked examples: 5.72 ft of head over 10560 ft (D 20 in, 4 ft3/s)', () => {
    const speed = 4 / ((Math.PI / 4) * (20 / 12) ** 2);
    const head = (colebrook(248625, 0.0005 / (20 / 12)) * 10560 * speed ** 2) / ((20 / 12) * 2 * 32.174);
    expect(head).toBeCloseTo(5.72, 1);
  });

  it('Crane 7.8, laminar: 6383 Pa with globe valve 340 f_T, f_T 0.014 (the book: 6382)', () => {
    const bore = 0.2027;
    const speed = (600 * 0.158987) / 3600 / ((Math.PI / 4) * bore ** 2);
    const reynolds = (869.2 * speed * bore) / 0.13;
    expect(laminarFactor(reynolds)).toBeCloseTo(0.0575, 4);
    const lost = ((laminarFactor(reynolds) * 60) / bore + 340 * 0.014) * ((869.2 * speed ** 2) / 2);
    expect(Math.abs(lost - 6383)).toBeLessThan(10);
  });

  it('takes the dearer where the flow may be either', () => {
    expect(darcyFactor(2299, 0)).toBe(64 / 2299);
    expect(darcyFactor(3000, 0)).toBe(colebrook(3000, 0));
    expect(darcyFactor(3000, 0)).toBeGreaterThan(64 / 3000);
  });
});

it("White's laminar bend: Re 250, bore 0.02, bend 0.1 across: 0.40632818 against 0.256 straight (open fluids library)", () => {
  expect(laminarFactor(250) * laminarBendFactor(250, 0.2)).toBeCloseTo(0.40632818, 3);
  expect(laminarBendFactor(20, 0.1)).toBe(1);
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

describe('a pipe partly full (exact geometry; Manning, published values 5.3)', () => {
  it.each([
    [0.1, 0.052, 0.2541, 0.0209],
    [0.3, 0.2523, 0.6838, 0.1958],
    [0.5, 0.5, 1, 0.5],
    [0.75, 0.8045, 1.2067, 0.9119],
    [0.95, 0.9813, 1.1458, 1.0745],
  ])('filled to %d', (filled, area, hydraulic, flow) => {
    expect(partFull(filled).areaShare).toBeCloseTo(area, 4);
    expect(partFull(filled).hydraulicShare).toBeCloseTo(hydraulic, 4);
    expect(manningShare(filled)).toBeCloseTo(flow, 4);
  });

  it('carries most at 0.9382 of its bore: 1.0757', () => {
    expect(manningShare(0.9382)).toBeCloseTo(1.0757, 4);
    expect(manningShare(0.93)).toBeLessThan(manningShare(0.9382));
    expect(manningShare(0.95)).toBeLessThan(manningShare(0.9382));
  });
});

describe('flow by fall alone', () => {
  it('laminar is Hagen and Poiseuille: pi g sin D^4 / (128 nu)', () => {
    // 12 mm, 5 degrees, 60 cSt: closed form in m3/s, then L/min.
    const sine = Math.sin((5 * Math.PI) / 180);
    const closed = ((Math.PI * 9.80665 * sine * 0.012 ** 4) / (128 * 60e-6)) * 6e4;
    expect(gravityFlowLPerMin(12, sine, 60, 0.0015)).toBeCloseTo(closed, 9);
  });

  it('turbulent water: the type 2 worked example, 0.41 m3/s in 0.5 m at a slope of 0.006', () => {
    const flow = gravityFlowLPerMin(500, 0.006, 1.023, 0.046);
    expect(flow / 6e4).toBeCloseTo(0.41, 2);
  });
});

// Published values 5.9: 10 US gpm in 3/4, 5/8 and 1/2 in bore: 7.26, 10.46, 16.34 ft/s.
it.each([
  [3 / 4, 7.26],
  [5 / 8, 10.46],
  [1 / 2, 16.34],
])('10 US gpm in %d in', (inches, feetPerSecond) => {
  const litres = 10 * 3.785411784;
  const speed = litres / 6e4 / ((Math.PI / 4) * (inchesToMm(inches) / 1000) ** 2);
  expect(speed / 0.3048).toBeCloseTo(feetPerSecond, 2);
});
