import { GRAVITY_M_PER_S2 } from '../../base/units.ts';
import type { Flow, Lay } from '../../document/lay/schema.ts';
import type { Hose } from '../../document/parts/schema.ts';
import type { ResolvedRun } from '../../document/project/resolve.ts';
import { flowLine } from './flowLine.ts';
import { type FluidState, fluidState } from './fluidState.ts';
import { boreRoughness, type FlowPath, type LineLoss, lineLoss, regimes } from './lineLoss.ts';
import { meanSpeedMPerS } from './meanSpeed.ts';

/** Corrugations of a hose whose table does not give their pitch: bores per pitch, from fine to coarse. */
const USUAL_PITCHES = { fine: 8, likely: 5, coarse: 4 } as const;
/** Bends of no agreed loss, and corrugations: a share either way. */
const BEND_BAND = 1 / 3;
const CORRUGATION_BAND = 0.5;

/**
 * What the wanted flow does in a laid hose: its speed, its pressure drop from mouth to mouth with a band, and what its
 * height gains or costs. undefined where no flow is wanted, for air, and for fluids whose viscosity nobody states. The
 * hose's shape is the laid one; ends by their angle and bore. Sources at each part (`lineLoss`, `fluidState`). An estimate: its band holds what the inputs do
 * not tell, not what a worn or dirty line does.
 */
export function flowOf(run: ResolvedRun, lay: Lay): Flow | undefined {
  const { service, flow = 'a-to-b' } = run.run;
  const fluid = fluidState(service);
  if (service.flowLPerMin === undefined || service.flowLPerMin <= 0 || fluid === undefined) return undefined;
  const boreMm = run.hose.insideDiameterMm;
  const speedMPerS = meanSpeedMPerS(service.flowLPerMin, boreMm);
  const reynoldsAt = (mm2PerS: number): number => (speedMPerS * boreMm * 1000) / mm2PerS;
  const dynamicKpa = (fluid.densityKgPerM3 * speedMPerS ** 2) / 2000;
  const path = pathOf(run, lay);
  const likely = { path, reynolds: reynoldsAt(fluid.viscosityMm2PerS.likely) };
  const loss = worstOf(likely.path, likely.reynolds);
  const totals = bandOf(run, path, fluid, reynoldsAt);
  const [upstream, downstream] = flow === 'a-to-b' ? (['a', 'b'] as const) : (['b', 'a'] as const);
  const fallMm = lay.ends[upstream].seatPoint[2] - lay.ends[downstream].seatPoint[2];
  const smooth = path.pitchMm === undefined ? undefined : sumOf(worstOf(withoutPitch(path), likely.reynolds));
  return {
    speedMPerS,
    reynolds: likely.reynolds,
    regime: regimes(likely.reynolds).length > 1 ? 'either' : (regimes(likely.reynolds)[0] ?? 'laminar'),
    dropKpa: { low: dynamicKpa * totals.low, likely: dynamicKpa * sumOf(loss), high: dynamicKpa * totals.high },
    hoseKpa: dynamicKpa * loss.hose,
    bendsKpa: dynamicKpa * loss.bends,
    endsKpa: dynamicKpa * loss.ends,
    headKpa: (fluid.densityKgPerM3 * GRAVITY_M_PER_S2 * fallMm) / 1e6,
    ...(smooth === undefined ? {} : { smoothBoreKpa: dynamicKpa * smooth }),
    basis: basisOf(run, fluid),
  };
}

/** mm. The pitch of a corrugated bore, usual where its table does not give it; undefined of a smooth one. */
export function pitchOf({ core, insideDiameterMm, convolutionPitchMm }: Hose): number | undefined {
  return core === 'ptfe-convoluted' ? (convolutionPitchMm ?? insideDiameterMm / USUAL_PITCHES.likely) : undefined;
}

function pathOf(run: ResolvedRun, lay: Lay): FlowPath {
  const { core, insideDiameterMm: boreMm } = run.hose;
  const pitchMm = pitchOf(run.hose);
  return {
    stretches: flowLine(lay),
    boreMm,
    roughnessMm: boreRoughness(core).likely,
    ...(pitchMm === undefined ? {} : { pitchMm }),
    ends: [run.a.end, run.b.end],
  };
}

function withoutPitch({ pitchMm: _none, ...path }: FlowPath): FlowPath {
  return path;
}

function sumOf({ hose, bends, ends }: LineLoss): number {
  return hose + bends + ends;
}

/** The losses in whichever regime costs more. */
function worstOf(path: FlowPath, reynolds: number): LineLoss {
  const losses = regimes(reynolds).map((regime) => lineLoss(path, reynolds, regime));
  return losses.reduce((worst, next) => (sumOf(next) > sumOf(worst) ? next : worst));
}

/** Least and greatest total over viscosity, roughness, regime, bends and corrugations, each at its own edge. */
function bandOf(
  { hose }: ResolvedRun,
  path: FlowPath,
  { viscosityMm2PerS }: FluidState,
  reynoldsAt: (mm2PerS: number) => number,
): { low: number; high: number } {
  const rough = boreRoughness(hose.core);
  const stated = hose.convolutionPitchMm !== undefined || path.pitchMm === undefined;
  const edges = [
    { roughnessMm: rough.low, pitchMm: stated ? path.pitchMm : path.boreMm / USUAL_PITCHES.fine, sign: -1 },
    { roughnessMm: rough.high, pitchMm: stated ? path.pitchMm : path.boreMm / USUAL_PITCHES.coarse, sign: 1 },
  ];
  const totals = edges.flatMap(({ roughnessMm, pitchMm, sign }) =>
    Object.values(viscosityMm2PerS).flatMap((mm2PerS) => {
      const reynolds = reynoldsAt(mm2PerS);
      const edge: FlowPath = { ...withoutPitch(path), roughnessMm, ...(pitchMm === undefined ? {} : { pitchMm }) };
      return regimes(reynolds).map((regime) => {
        const loss = lineLoss(edge, reynolds, regime);
        const hoseBand = pitchMm === undefined ? 0 : CORRUGATION_BAND;
        return loss.hose * (1 + sign * hoseBand) + (loss.bends + loss.ends) * (1 + sign * BEND_BAND);
      });
    }),
  );
  return { low: Math.min(...totals), high: Math.max(...totals) };
}

function basisOf({ hose, a, b }: ResolvedRun, fluid: FluidState): string[] {
  const boreless = [a.end, b.end].filter((end) => end.boreMm === undefined);
  return [
    fluid.basis,
    fluid.densityBasis,
    boreRoughness(hose.core).basis,
    ...(hose.core === 'ptfe-convoluted' && hose.convolutionPitchMm === undefined
      ? ['pitch of the convolutions not stated: a fifth of the bore taken, an eighth to a quarter in the band']
      : []),
    ...(boreless.length > 0 ? ['bore of the ends not stated: their narrowing is not counted'] : []),
  ];
}
