import { describe, expect, it } from 'vitest';
import { GRAVITY_M_PER_S2, inchesToMm } from '../../../../shared/base/units.ts';
import { squareBendLoss } from '../../../../shared/solve/flow/bendLoss.ts';
import { colebrook, darcyFactor, laminarBendFactor, laminarFactor } from '../../../../shared/solve/flow/darcyFactor.ts';
import { gravityFlowLPerMin } from '../../../../shared/solve/flow/drainFlow.ts';
import { meanSpeedMPerS } from '../../../../shared/solve/flow/meanSpeed.ts';
import { manningShare, partFull } from '../../../../shared/solve/flow/partFull.ts';

const FOOT_M = 0.3048;
const GALLON_L = 3.785411784;
const PSI_PA = 6894.757293168;

/** Relative difference. */
const off = (value: number, printed: number): number => Math.abs(value / printed - 1);

interface Pipe {
  readonly boreMm: number;
  readonly flowLPerMin: number;
  readonly viscosityMm2PerS: number;
  readonly roughnessMm: number;
}

/** Speed, Reynolds number and friction factor of a straight pipe. */
function flowIn({ boreMm, flowLPerMin, viscosityMm2PerS, roughnessMm }: Pipe) {
  const speed = meanSpeedMPerS(flowLPerMin, boreMm);
  const reynolds = (speed * boreMm * 1000) / viscosityMm2PerS;
  return { speed, reynolds, factor: darcyFactor(reynolds, roughnessMm / boreMm) };
}

/** Metres of head that so many metres of it lose. */
function headM(pipe: Pipe, lengthM: number): number {
  const { speed, factor } = flowIn(pipe);
  return (((factor * lengthM) / (pipe.boreMm / 1000)) * speed ** 2) / (2 * GRAVITY_M_PER_S2);
}

describe('worked examples of friction (published values 5.2)', () => {
  // EdM44/hydraulics README, commit f0555073, types 1 to 3
  it('how much it loses: 20 in, 10560 ft, 4 ft3/s, 0.0005 ft rough: Re 248 625, f 0.0173, 5.72 ft', () => {
    const boreMm = inchesToMm(20);
    const flowLPerMin = 4 * FOOT_M ** 3 * 6e4;
    const speed = meanSpeedMPerS(flowLPerMin, boreMm);
    const pipe = {
      boreMm,
      flowLPerMin,
      roughnessMm: 0.0005 * FOOT_M * 1000,
      viscosityMm2PerS: (speed * boreMm * 1000) / 248625,
    };
    expect(speed / FOOT_M).toBeCloseTo(1.8335, 4);
    expect(Math.abs(flowIn(pipe).factor - 0.0173)).toBeLessThan(5.1e-5);
    expect(Math.abs(headM(pipe, 10560 * FOOT_M) / FOOT_M - 5.72)).toBeLessThan(0.006);
  });

  it('how much it carries: 0.5 m at a slope of 0.006, water of 20 C, 0.046 mm rough: Re 1 010 337, f 0.0133, 0.41 m3/s', () => {
    const viscosityMm2PerS = 1.023;
    const flowLPerMin = gravityFlowLPerMin(500, 0.006, viscosityMm2PerS, 0.046);
    const { reynolds, factor } = flowIn({ boreMm: 500, flowLPerMin, viscosityMm2PerS, roughnessMm: 0.046 });
    expect(Math.abs(flowLPerMin / 6e4 - 0.4129)).toBeLessThan(0.0011);
    expect(off(reynolds, 1010337)).toBeLessThan(0.02);
    expect(Math.abs(factor - 0.0133)).toBeLessThan(5.1e-5);
  });

  it('how wide it must be: 37.5 ft3/s, 8000 ft, 215 ft, 0.0008 ft rough: Re 2 336 974, f 0.0164, 1.85 ft', () => {
    const boreMm = 1.85 * FOOT_M * 1000;
    const flowLPerMin = 37.5 * FOOT_M ** 3 * 6e4;
    const viscosityMm2PerS = (meanSpeedMPerS(flowLPerMin, boreMm) * boreMm * 1000) / 2336974;
    const pipe = { boreMm, flowLPerMin, viscosityMm2PerS, roughnessMm: 0.0008 * FOOT_M * 1000 };
    expect(Math.abs(flowIn(pipe).factor - 0.0164)).toBeLessThan(5.1e-5);
    expect(Math.abs(headM(pipe, 8000 * FOOT_M) / FOOT_M - 214.6)).toBeLessThan(0.3);
    // A hundredth of a foot to either side it loses more, and less, than 215 ft.
    const at = (feet: number) => headM({ ...pipe, boreMm: feet * FOOT_M * 1000 }, 8000 * FOOT_M) / FOOT_M;
    expect(at(1.84)).toBeGreaterThan(215);
    expect(at(1.86)).toBeLessThan(215);
  });

  // Crane TP-410 as quoted in the notebooks of CalebBell/fluids
  it('Crane 7.1, smooth: water of 30 C, 52.5 mm, 200 L/min: Re 100 600, f 0.0179 (exact 0.0181)', () => {
    const { reynolds } = flowIn({ boreMm: 52.5, flowLPerMin: 200, viscosityMm2PerS: 0.8, roughnessMm: 0 });
    expect(off(reynolds, 100600)).toBeLessThan(0.01);
    expect(colebrook(101200, 0)).toBeCloseTo(0.018, 3);
    expect(off(colebrook(100600, 0), 0.0179)).toBeLessThan(0.012);
  });

  it('Crane 7.13, oil of 2.7 cSt and 815 kg/m3, 2.067 in, 100 ft, 2 gal/s: 66 500 Pa with f 0.0230 (exact 0.02270: 65 620)', () => {
    const pipe = {
      boreMm: inchesToMm(2.067),
      flowLPerMin: 120 * GALLON_L,
      viscosityMm2PerS: 2.7,
      roughnessMm: inchesToMm(0.0018),
    };
    expect(flowIn(pipe).factor).toBeCloseTo(0.0227, 4);
    const lost = headM(pipe, 100 * FOOT_M) * 815 * GRAVITY_M_PER_S2;
    expect(off(lost, 65620)).toBeLessThan(0.002);
    expect(off((lost / flowIn(pipe).factor) * 0.023, 66500)).toBeLessThan(0.002);
  });

  it('Crane 7.9, laminar with a bend: SAE 30 of 130 cP, 5.047 in, 400 gpm: 6.414 ft/s, Re 1676, f 0.0382, K 29.99, 26.06 psi', () => {
    const density = 54.26 * 16.018463;
    const boreMm = inchesToMm(5.047);
    const pipe = { boreMm, flowLPerMin: 400 * GALLON_L, viscosityMm2PerS: (0.13 / density) * 1e6, roughnessMm: 0 };
    const { speed, reynolds, factor } = flowIn(pipe);
    expect(speed / FOOT_M).toBeCloseTo(6.415, 2);
    expect(off(reynolds, 1676)).toBeLessThan(0.001);
    expect(factor).toBeCloseTo(0.0382, 4);
    // Gate valve 8, angle valve 150, bend at one bore 20 times the factor of rough flow in 5 in, 0.0158 (from memory).
    const lossFactor = (factor * 300 * FOOT_M) / (boreMm / 1000) + (8 + 150 + squareBendLoss(1, 1)) * 0.0158;
    expect(off(lossFactor, 29.99)).toBeLessThan(0.003);
    const lost = density * (lossFactor * (speed ** 2 / 2) + GRAVITY_M_PER_S2 * 50 * FOOT_M);
    expect(off(lost / PSI_PA, 26.06)).toBeLessThan(0.002);
  });

  it('Crane 7.8, laminar: 6383 Pa with globe valve 340 f_T, f_T 0.014 (the book: 6382)', () => {
    const flowLPerMin = (600 * 158.987) / 60;
    const pipe = { boreMm: 202.7, flowLPerMin, viscosityMm2PerS: (0.13 / 869.2) * 1e6, roughnessMm: 0 };
    const { speed, reynolds, factor } = flowIn(pipe);
    expect(off(reynolds, 1113)).toBeLessThan(0.001);
    expect(factor).toBeCloseTo(0.0575, 4);
    expect(Math.abs(((factor * 60) / 0.2027 + 340 * 0.014) * ((869.2 * speed ** 2) / 2) - 6382)).toBeLessThan(10);
  });

  it('Crane 7.15, 100 gpm in 3 in: 4.34 ft/s (its fittings are not in what was read, so its head is not reckoned)', () => {
    expect(meanSpeedMPerS(100 * GALLON_L, inchesToMm(3.068)) / FOOT_M).toBeCloseTo(4.34, 2);
  });

  it('Crane 7.26, two thirds full: 24 in at 0.75 in/ft, water of 60 F, e/D 0.00036: 24 500 gpm by the book, 24 411 solved', () => {
    const boreMm = 609.6;
    const { areaShare, hydraulicShare } = partFull(2 / 3);
    const areaM2 = areaShare * (Math.PI / 4) * (boreMm / 1000) ** 2;
    const hydraulicM = (hydraulicShare * boreMm) / 4 / 1000;
    expect(areaM2).toBeCloseTo(0.2067, 4);
    expect(hydraulicM).toBeCloseTo(0.17747, 4);
    // A full pipe of four times the hydraulic radius runs as fast; the book gives it the relative roughness of the pipe.
    const asFullMm = 4 * hydraulicM * 1000;
    const flowLPerMin = gravityFlowLPerMin(asFullMm, 0.75 / 12, 1.123, 0.00036 * asFullMm);
    const { reynolds, factor } = flowIn({
      boreMm: asFullMm,
      flowLPerMin,
      viscosityMm2PerS: 1.123,
      roughnessMm: 0.00036 * asFullMm,
    });
    expect(reynolds).toBeGreaterThan(4e6);
    expect(factor).toBeCloseTo(0.01567, 4);
    const gpm = (meanSpeedMPerS(flowLPerMin, asFullMm) * areaM2 * 6e4) / GALLON_L;
    expect(off(gpm, 24411)).toBeLessThan(0.003);
    expect(off(gpm, 24500)).toBeLessThan(0.005);
  });

  it("White's laminar bend: Re 250, bore 0.02, bend 0.1 across: 0.40632818 against 0.256 straight", () => {
    expect(laminarFactor(250)).toBe(0.256);
    expect(laminarFactor(250) * laminarBendFactor(250, 0.2)).toBeCloseTo(0.40632818, 7);
    expect(laminarBendFactor(20, 0.1)).toBe(1);
  });
});

describe('a pipe partly full, to the printed digits (published values 5.3, exact geometry; Manning)', () => {
  it.each([
    [0.1, 0.052, 0.2541, 0.4012, 0.0209],
    [0.2, 0.1424, 0.4824, 0.6151, 0.0876],
    [0.25, 0.1955, 0.5865, 0.7007, 0.137],
    [0.3, 0.2523, 0.6838, 0.7761, 0.1958],
    [0.4, 0.3735, 0.8569, 0.9022, 0.337],
    [0.5, 0.5, 1, 1, 0.5],
    [0.6, 0.6265, 1.1106, 1.0724, 0.6718],
    [0.7, 0.7477, 1.1849, 1.1198, 0.8372],
    [0.75, 0.8045, 1.2067, 1.1335, 0.9119],
    [0.8, 0.8576, 1.2168, 1.1397, 0.9775],
    [0.9, 0.948, 1.1921, 1.1243, 1.0658],
    [0.95, 0.9813, 1.1458, 1.095, 1.0745],
  ])('filled to %d', (filled, area, hydraulic, speed, flow) => {
    const { areaShare, hydraulicShare } = partFull(filled);
    expect(areaShare).toBeCloseTo(area, 4);
    expect(hydraulicShare).toBeCloseTo(hydraulic, 4);
    expect(manningShare(filled) / areaShare).toBeCloseTo(speed, 4);
    expect(manningShare(filled)).toBeCloseTo(flow, 4);
  });

  it('carries most at 0.9382 of its bore: 1.0757', () => {
    expect(manningShare(0.9382)).toBeCloseTo(1.0757, 4);
    expect(manningShare(0.93)).toBeLessThan(manningShare(0.9382));
    expect(manningShare(0.95)).toBeLessThan(manningShare(0.9382));
  });
});

describe('flow, bore and speed (published values 5.9)', () => {
  const feetPerSecond = (gpm: number, inches: number): number =>
    meanSpeedMPerS(gpm * GALLON_L, inchesToMm(inches)) / FOOT_M;

  it('is 0.3208 gpm over square inches, in ft/s', () => {
    expect(feetPerSecond(1, Math.sqrt(4 / Math.PI))).toBeCloseTo(0.32083, 5);
  });

  // gpm, bore in, ft/s: summersrubber.com (nomograph: 7.5, 10.3, 16), a catalogue's example, flodraulic.com
  it.each([
    [10, 3 / 4, 7.26],
    [10, 5 / 8, 10.46],
    [10, 1 / 2, 16.34],
    [16, 0.5716, 20],
    [5.95, 0.493, 10],
    [14.21, 0.622, 15],
    [53.88, 1.049, 20],
  ])('%d US gpm in %d in run at %d ft/s', (gpm, inches, printed) => {
    expect(Math.abs(feetPerSecond(gpm, inches) - printed)).toBeLessThan(0.006);
  });

  // 20 L/min by hytec-hydraulik.com, exact: suction 0.5 to 1.5 m/s, return 2 to 4, pressure 3 to 10
  it.each([
    [29.13, 0.5],
    [16.82, 1.5],
    [14.57, 2],
    [10.3, 4],
    [11.89, 3],
    [6.51, 10],
  ])('20 L/min in %d mm run at %d m/s', (boreMm, printed) => {
    expect(off(meanSpeedMPerS(20, boreMm), printed)).toBeLessThan(0.002);
  });
});
