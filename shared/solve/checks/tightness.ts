import type { RockExtreme } from '../../document/lay/schema.ts';
import { lengthText } from '../../document/wording/quantityText.ts';

type Lying = Pick<RockExtreme, 'slackLeftMm' | 'missingMm'>;

/** mm. The slack of a hose whose holds have moved; below zero = tight, by what it lacks to reach where it does not. */
export function slackOrLackMm({ slackLeftMm, missingMm }: Lying): number {
  return missingMm === undefined ? slackLeftMm : Math.min(slackLeftMm, -missingMm);
}

/** That in words, to go on after where it is so. */
export function tightnessText(lying: Lying): string {
  const measured = slackOrLackMm(lying);
  const reach =
    lying.missingMm === undefined ? '' : ` It is ${lengthText(lying.missingMm)} too short to reach in a straight line.`;
  return measured < 0
    ? `the hose is ${lengthText(-measured)} shorter than its shortest lay: it pulls on its ends.${reach}`
    : `the hose has ${lengthText(measured)} of slack left.${reach}`;
}
