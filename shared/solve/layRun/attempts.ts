/**
 * One attempt: how much of each clearance and of the straight tails is asked. The first two ask for all. Later ones give
 * up tail, then what the service asks of the shape, then clearance, to find the lay that breaks least; the last looks through everything, only
 * to have a hose to show.
 */
export interface Attempt {
  /** of every clearance, 0 to 1 */
  readonly clearanceShare: number;
  /** of the straight tail wanted at both ends, 0 to 1 */
  readonly tailShare: number;
  /** true = the bay and the other hoses are not there */
  readonly blind?: boolean;
  /** true = what the service asks of the shape (a drain's fall, no high point, no tight bend at a pump) is given up */
  readonly givesUpCharacter?: boolean;
  /** true = only the shortest way, quickly: for trying many things one after the other */
  readonly brief?: boolean;
  /** true = only along the shortest way and gentler ones, not on other sides of things */
  readonly keepsItsSides?: boolean;
  /** true = the shortest way is looked for with all means, also such as seldom find what a quick look does not */
  readonly thorough?: boolean;
}

/** Whether an attempt asks for every clearance. */
export function asksEveryClearance({ clearanceShare }: Attempt): boolean {
  return clearanceShare === 1;
}

/** Whether all that an attempt gives up is what the service asks of the shape. */
export function givesUpCharacterAlone({ clearanceShare, tailShare, givesUpCharacter }: Attempt): boolean {
  return clearanceShare === 1 && tailShare === 1 && givesUpCharacter === true;
}

export const EVERYTHING: Attempt = { clearanceShare: 1, tailShare: 1 };
/** Nothing given up, and not looked for all round. */
export const EVERYTHING_BESIDE: Attempt = { ...EVERYTHING, keepsItsSides: true };
/** Nothing given up where a quick look found no way. */
export const EVERYTHING_SOUGHT: Attempt = { ...EVERYTHING, thorough: true };
/** Only where the service asks something of the shape: all of the rest is kept before any clearance is given up. */
export const WITHOUT_CHARACTER: Attempt = { clearanceShare: 1, tailShare: 1, givesUpCharacter: true };
export const WITHOUT_CHARACTER_BESIDE: Attempt = { ...WITHOUT_CHARACTER, keepsItsSides: true };
export const HALF_CLEARANCE: Attempt = { clearanceShare: 0.5, tailShare: 1, givesUpCharacter: true };
export const LITTLE_CLEARANCE: Attempt = { clearanceShare: 0.2, tailShare: 0.5, givesUpCharacter: true };
/** The least that can be asked without going through things. */
export const LEAST: Attempt = { clearanceShare: 0, tailShare: 0, givesUpCharacter: true };
export const BLIND: Attempt = { clearanceShare: 0, tailShare: 1, givesUpCharacter: true, blind: true };

/** All of them, in the order in which things are given up. */
export const ATTEMPTS: readonly Attempt[] = [
  EVERYTHING,
  EVERYTHING_SOUGHT,
  { clearanceShare: 1, tailShare: 0.5 },
  WITHOUT_CHARACTER,
  HALF_CLEARANCE,
  LITTLE_CLEARANCE,
  LEAST,
  BLIND,
];
