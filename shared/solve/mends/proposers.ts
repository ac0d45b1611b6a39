import type { CheckName } from '../../document/wording/findingWords.ts';
import { ownWay } from './bundleProposals.ts';
import { freeClocks, otherAngles, otherMaterials } from './endProposals.ts';
import {
  clampsBetween,
  evenFall,
  fittingClamp,
  grommet,
  hotterClamp,
  letGo,
  moveClamp,
  slideAway,
  slideClamp,
  standOff,
} from './holdProposals.ts';
import { clampsRight, fastJoints, hosesForClamps } from './jointProposals.ts';
import { lessSlack, moreSlack, newHose } from './lengthProposals.ts';
import { bleed, otherHoses, sleeves, sleeveWhereAsked, softerHoses, tighterHoses } from './partProposals.ts';
import type { Proposer } from './proposal.ts';
import { largerSizes, largerWhereAsked, smallerSizes } from './sizeProposals.ts';

/** What may mend the findings of a check, by its name, most promising first. A check that is not here has no mend to try. */
export const PROPOSERS: Partial<Record<CheckName, readonly Proposer[]>> = {
  laid: [freeClocks, otherAngles, tighterHoses, letGo, smallerSizes],
  bendRadius: [freeClocks, moreSlack, otherAngles, tighterHoses, smallerSizes],
  selfContact: [freeClocks, lessSlack, standOff, otherAngles],
  straightTail: [freeClocks, otherAngles],
  endRoom: [freeClocks, otherAngles],
  wrenchAccess: [freeClocks, otherAngles],
  secondWrench: [freeClocks, otherAngles],
  slack: [moreSlack, lessSlack, newHose, otherAngles],
  breathing: [moreSlack, standOff, newHose],
  tolerance: [moreSlack, newHose, otherAngles, tighterHoses, smallerSizes],
  asBuilt: [newHose],
  rock: [moreSlack, standOff, moveClamp, slideAway, letGo, otherAngles, lessSlack, otherHoses],
  taperRange: [moreSlack, otherAngles],
  clearance: [standOff, moveClamp, freeClocks, otherAngles],
  heatDistance: [sleeveWhereAsked, standOff, freeClocks, otherAngles],
  heatEstimate: [sleeves, otherMaterials, otherHoses],
  chafe: [sleeves, standOff, moveClamp, softerHoses],
  wiring: [standOff, freeClocks, otherAngles],
  clampSpacing: [clampsBetween],
  clampPlace: [slideClamp, letGo],
  clampFits: [fittingClamp],
  clampHeat: [hotterClamp, slideAway, letGo],
  engineSlack: [moreSlack, slideAway, letGo],
  passThrough: [grommet],
  drainFall: [freeClocks, otherAngles, lessSlack, evenFall, smallerSizes],
  drainLean: [freeClocks, otherAngles, lessSlack, evenFall],
  turboDrainEnds: [largerWhereAsked, otherAngles],
  turboFeed: [largerWhereAsked],
  turboWater: [freeClocks, otherAngles, lessSlack, evenFall],
  coolantHighPoint: [freeClocks, otherAngles, lessSlack, evenFall, bleed],
  suctionBend: [freeClocks, otherAngles, moreSlack],
  suctionPressure: [otherHoses, largerSizes, lessSlack, otherAngles],
  flowSpeed: [largerSizes, otherHoses],
  pressureDrop: [otherHoses, largerSizes],
  drainCapacity: [otherHoses, largerSizes, lessSlack, otherAngles],
  bundlePressure: [ownWay],
  clampPressure: [slideAway, letGo],
  onePlane: [freeClocks, otherAngles],
  pressureRating: [otherHoses, otherMaterials],
  vacuumKnown: [otherHoses],
  hoseClamps: [clampsRight, fastJoints, hosesForClamps],
  pushOn: [fastJoints, otherMaterials, otherHoses],
  fluidCore: [otherHoses],
  fuelMarking: [otherHoses],
  endMetals: [otherMaterials],
  temperatureRating: [otherMaterials, otherHoses],
  staticCharge: [otherHoses],
};
