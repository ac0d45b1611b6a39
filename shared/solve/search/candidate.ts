import { type ArcLinePath, pathLengthMm } from '../../geometry/arcLinePath.ts';

/** A clear way under work: its path and the clocks its ends stand at. */
export interface Candidate {
  readonly path: ArcLinePath;
  readonly lengthMm: number;
  readonly fromClockRad: number;
  readonly toClockRad: number;
}

export function candidateOf(path: ArcLinePath, fromClockRad: number, toClockRad: number): Candidate {
  return { path, lengthMm: pathLengthMm(path), fromClockRad, toClockRad };
}
