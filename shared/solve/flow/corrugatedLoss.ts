/** How far the stream widens into a corrugation, over its pitch (both sides together twice this). */
const WIDENS = 0.219;

/**
 * Loss factor of one corrugation, in dynamic pressures: the stream widens by 0.438 pitches and narrows again (Hawthorne,
 * Product Engineering, 10 June 1963, 98). pitchOverBore: corrugation pitch over bore, above 0.
 */
export function corrugationLoss(pitchOverBore: number): number {
  return (1 - (1 / (1 + 2 * WIDENS * pitchOverBore)) ** 2) ** 2;
}

/** Darcy's factor that corrugated hose acts as if it had: losses of one corrugation a pitch. Not known better than by half either way: trade rules say 2 to 3 times steel pipe. */
export function corrugatedFactor(pitchOverBore: number): number {
  return corrugationLoss(pitchOverBore) / pitchOverBore;
}
