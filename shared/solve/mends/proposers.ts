import type { CheckName } from '../../document/wording/findingWords.ts';
import { freeClocks, otherAngles, otherMaterials } from './endProposals.ts';
import { clampsBetween, fittingClamp, grommet, letGo, slideAway, slideClamp, standOff } from './holdProposals.ts';
import { lessSlack, moreSlack, newHose } from './lengthProposals.ts';
import { bleed, otherHoses, sleeves, sleeveWhereAsked, softerHoses, tighterHoses } from './partProposals.ts';
import type { Proposer } from './proposal.ts';

/** What may mend the findings of a check, by its name, most promising first. A check that is not here has no mend to try. */
export const PROPOSERS: Partial<Record<CheckName, readonly Proposer[]>> = {
  laid: [freeClocks, otherAngles, tighterHoses, letGo],
  bendRadius: [freeClocks, moreSlack, otherAngles, tighterHoses],
  selfContact: [freeClocks, lessSlack, standOff, otherAngles],
  straightTail: [freeClocks, otherAngles],
  endRoom: [freeClocks, otherAngles],
  wrenchAccess: [freeClocks, otherAngles],
  secondWrench: [freeClocks, otherAngles],
  slack: [moreSlack, lessSlack, newHose, otherAngles],
  breathing: [moreSlack, standOff, newHose],
  tolerance: [moreSlack, newHose, otherAngles],
  asBuilt: [newHose],
  rock: [moreSlack, standOff, slideAway, letGo, otherAngles],
  taperRange: [moreSlack, otherAngles],
  clearance: [standOff, freeClocks, otherAngles],
  heatDistance: [sleeveWhereAsked, standOff, freeClocks, otherAngles],
  heatEstimate: [sleeves, otherMaterials, otherHoses],
  chafe: [sleeves, standOff, softerHoses],
  wiring: [standOff, freeClocks, otherAngles],
  clampSpacing: [clampsBetween],
  clampPlace: [slideClamp, letGo],
  clampFits: [fittingClamp],
  engineSlack: [moreSlack, slideAway, letGo],
  passThrough: [grommet],
  drainFall: [freeClocks, otherAngles, lessSlack],
  turboDrainEnds: [otherAngles],
  coolantHighPoint: [freeClocks, otherAngles, lessSlack, bleed],
  suctionBend: [freeClocks, otherAngles, moreSlack],
  suctionPressure: [otherHoses],
  pressureDrop: [otherHoses],
  onePlane: [freeClocks, otherAngles],
  pressureRating: [otherHoses, otherMaterials],
  vacuumKnown: [otherHoses],
  pushOn: [otherMaterials, otherHoses],
  fluidCore: [otherHoses],
  fuelMarking: [otherHoses],
  endMetals: [otherMaterials],
  temperatureRating: [otherMaterials, otherHoses],
  staticCharge: [otherHoses],
};
