import { FORCE_GUESS_RESIDUAL } from './rodLimits.ts';
import { look, type RodRun } from './rodRun.ts';
import { symmetricEigen } from './symmetricEigen.ts';

/**
 * The end force that leaves the least out of balance at the state as it stands, by least squares over the edges; kept
 * only where it balances nearly everything, as it does for a shape that was at rest before.
 */
export function guessMultiplier(run: RodRun): void {
  const { ws } = run;
  const { bases, gradient, border, eigenvalues, eigenvectors, multiplier, edges } = ws;
  look(run);
  const before = run.residual;
  border.fill(0);
  const pull = [0, 0, 0];
  for (let k = 0; k < 2 * edges; k++) {
    for (let r = 0; r < 3; r++) {
      pull[r] = pull[r]! - (bases[3 * k + r]! * gradient[k]!) / edges;
      for (let c = 0; c < 3; c++) border[3 * r + c] = border[3 * r + c]! + bases[3 * k + r]! * bases[3 * k + c]!;
    }
  }
  symmetricEigen(border, 3, eigenvalues, eigenvectors);
  for (let j = 0; j < 3; j++) {
    const share = eigenvalues[j]! / (edges * edges);
    if (share <= Number.EPSILON) continue;
    const along =
      (eigenvectors[j]! * pull[0]! + eigenvectors[3 + j]! * pull[1]! + eigenvectors[6 + j]! * pull[2]!) / share;
    for (let i = 0; i < 3; i++) multiplier[i] = multiplier[i]! + eigenvectors[3 * i + j]! * along;
  }
  look(run);
  if (!(run.residual < FORCE_GUESS_RESIDUAL && run.residual < before)) multiplier.fill(0);
}
