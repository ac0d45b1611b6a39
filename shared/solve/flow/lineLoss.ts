import type { End, Hose } from '../../document/parts/schema.ts';
import { bendExcess, squareBendLoss } from './bendLoss.ts';
import { corrugatedFactor } from './corrugatedLoss.ts';
import { colebrook, LAMINAR_TO, laminarBendFactor, laminarFactor, TURBULENT_FROM } from './darcyFactor.ts';
import type { FlowStretch } from './flowLine.ts';

/** What a line loses, in dynamic pressures of the hose's own bore. */
export interface LineLoss {
  readonly hose: number;
  readonly bends: number;
  readonly ends: number;
}

/** A line as the flow meets it. Lengths in mm. */
export interface FlowPath {
  readonly stretches: readonly FlowStretch[];
  readonly boreMm: number;
  readonly roughnessMm: number;
  /** of a corrugated bore */
  readonly pitchMm?: number;
  readonly ends: readonly End[];
}

/** Which way friction is taken where it may be either. */
export type Regime = 'laminar' | 'turbulent';

/** The regimes that a flow may have. */
export function regimes(reynolds: number): Regime[] {
  return [
    ...(reynolds < TURBULENT_FROM ? (['laminar'] as const) : []),
    ...(reynolds >= LAMINAR_TO ? (['turbulent'] as const) : []),
  ];
}

/** The losses of a line. reynolds: in the hose's bore. Laminar: Hagen and Poiseuille with White's factor in bends; turbulent: Colebrook with Crane's bends; corrugated: Hawthorne, never less than a smooth bore. */
export function lineLoss(path: FlowPath, reynolds: number, regime: Regime): LineLoss {
  const { stretches, boreMm, roughnessMm, pitchMm } = path;
  const boresLong = stretches.reduce((sum, { lengthMm }) => sum + lengthMm, 0) / boreMm;
  const straight = regime === 'laminar' ? laminarFactor(reynolds) : colebrook(reynolds, roughnessMm / boreMm);
  const bends = stretches.reduce((sum, stretch) => sum + bendLoss(stretch, boreMm, reynolds, regime, straight), 0);
  const smooth = { hose: straight * boresLong, bends };
  const corrugated = pitchMm === undefined ? 0 : corrugatedFactor(pitchMm / boreMm) * boresLong;
  const hose = Math.max(smooth.hose, corrugated);
  return { hose, bends: smooth.bends, ends: path.ends.reduce((sum, end) => sum + endLoss(end, path, reynolds), 0) };
}

function bendLoss(
  { lengthMm, turnRad }: FlowStretch,
  boreMm: number,
  reynolds: number,
  regime: Regime,
  friction: number,
): number {
  if (turnRad <= 0 || lengthMm <= 0) return 0;
  const radiusMm = lengthMm / turnRad;
  if (regime === 'turbulent') return bendExcess(turnRad, radiusMm / boreMm, friction);
  return ((friction * lengthMm) / boreMm) * (laminarBendFactor(reynolds, boreMm / (2 * radiusMm)) - 1);
}

/** Bend radius of an end's tube over its bore where the table does not give it: a tight forged or bent elbow. */
const USUAL_ELBOW = 1.5;
/** Reynolds number at which the rough part of an elbow's loss is read. */
const ROUGH_REYNOLDS = 1e5;
/** Loss of a square elbow in slow flow times Reynolds number (Hooper, Chem. Eng. 88 (1981) 96: from memory). */
const SLOW_ELBOW = 800;

/** An end's loss: its elbow, and where its bore is known the narrowing into it and the widening after it (Borda and Carnot). */
function endLoss(end: End, { boreMm, roughnessMm }: FlowPath, reynolds: number): number {
  const endBoreMm = end.boreMm ?? boreMm;
  const faster = (boreMm / endBoreMm) ** 4;
  const share = Math.min(1, (endBoreMm / boreMm) ** 2);
  const step = 0.5 * (1 - share) + (1 - share) ** 2;
  const squares = end.bendAngleDeg / 90;
  const tight = end.tubeBendRadiusMm === undefined ? USUAL_ELBOW : end.tubeBendRadiusMm / endBoreMm;
  const elbow = squareBendLoss(tight, colebrook(ROUGH_REYNOLDS, roughnessMm / endBoreMm)) + SLOW_ELBOW / reynolds;
  return faster * (step + squares * elbow);
}

/** Roughness of a bore, mm, with its edges and whose word it is. */
export interface Roughness {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
  readonly basis: string;
}

const ROUGHNESS: Record<'ptfe' | 'rubber', Roughness> = {
  ptfe: {
    low: 0.001,
    likely: 0.0015,
    high: 0.005,
    basis: 'bore as drawn tube, 0.0015 mm rough (from memory; 0.005 for coated plastic, Farshad and Rieke 2006)',
  },
  rubber: { low: 0.006, likely: 0.02, high: 0.07, basis: 'smooth rubber bore, 0.006 to 0.07 mm rough (from memory)' },
};

/** The roughness of a hose's bore, mm: PTFE as drawn tube, rubber smooth. */
export function boreRoughness(core: Hose['core']): Roughness {
  return ROUGHNESS[core === 'ptfe-smooth' || core === 'ptfe-convoluted' ? 'ptfe' : 'rubber'];
}
