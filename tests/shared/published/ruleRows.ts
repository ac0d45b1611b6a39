import { KPA_PER_PSI, mmToInches } from '../../../shared/base/units.ts';
import { JOINT_GAPS } from '../../../shared/document/assembly/jointGap.ts';
import { ruleById } from '../../../shared/document/rules/index.ts';
import { ANTI_STATIC_OHM } from '../../../shared/solve/checks/staticCharge.ts';
import type { Cell, Shipped } from './cells.ts';

/** The rules whose figures are asked for below. */
export const compared = new Set<string>();

/** A rule's value in the unit of print. */
const rule = (id: string, factor = 1): Shipped => {
  compared.add(id);
  const found = ruleById(id);
  return { numbers: [(found?.value ?? Number.NaN) * factor], source: found?.source ?? '' };
};

/** A rule's range in the unit of print. */
const range = (id: string, factor = 1): Shipped => {
  compared.add(id);
  const { low = Number.NaN, high = Number.NaN } = ruleById(id)?.range ?? {};
  return { numbers: [low * factor, high * factor], source: ruleById(id)?.source ?? '' };
};

export const ruleRow = ({ what }: Cell): Shipped => RULE_ROWS[what] ?? { numbers: [] };

export const RULE_ROWS: Readonly<Record<string, Shipped>> = {
  breathing: {
    numbers: [...rule('breathing-longer', 100).numbers, ...rule('breathing-shorter', 100).numbers],
    source: ruleById('breathing-longer')?.source ?? '',
  },
  'slack-wanted': range('slack-wanted', 100),
  'clamp-spacing': rule('clamp-spacing'),
  'clamp-spacing-army': rule('clamp-spacing'),
  'burst-multiple': rule('burst-multiple'),
  'rock-twist': { ...rule('rock-twist'), numbers: [5, 70, ...rule('rock-twist').numbers, 90] },
  'taper-twist': { ...rule('taper-twist'), numbers: [5, 70, ...rule('taper-twist').numbers, 90] },
  'built-twist': { ...rule('built-twist'), numbers: [5, 70, ...rule('built-twist').numbers, 90] },
  'heat-cover-textile': { ...rule('heat-cover-textile'), numbers: [-54, ...rule('heat-cover-textile').numbers] },
  // how far two of its metals stand apart, an alloy's number, and the limit
  'galvanic-apart': { ...rule('galvanic-apart'), numbers: [270, 6061, ...rule('galvanic-apart').numbers] },
  'engine-slack': {
    ...rule('engine-slack'),
    numbers: [...rule('engine-first-support', 1 / 25.4).numbers, ...rule('engine-slack', 1 / 25.4).numbers],
  },
  'fuel-test-pressure': rule('fuel-test-pressure', 1 / KPA_PER_PSI),
  // The first number is the torque of one maker's band, beside those of a table.
  'hose-clamp-from-end': {
    ...rule('hose-clamp-from-end'),
    numbers: [35, ...rule('hose-clamp-from-end', 1 / 25.4).numbers],
  },
  'straight-tail': rule('straight-tail'),
  short: rule('clock-tolerance-short'),
  long: rule('clock-tolerance-long'),
  // suction, return, pressure
  'flow-speed': {
    numbers: [
      ...range('flow-speed-suction').numbers,
      ...range('flow-speed-return').numbers,
      ...range('flow-speed-pressure').numbers,
    ],
    source: ruleById('flow-speed-suction')?.source ?? '',
  },
  'aluminium-end-temperature': {
    ...rule('aluminium-end-temperature'),
    numbers: [-55, ...rule('aluminium-end-temperature').numbers],
  },
  'wiring-preferred': rule('wiring-preferred', 1 / 25.4),
  'clearance-wiring': rule('clearance-wiring', 1 / 25.4),
  'clearance-plain': rule('clearance-plain'),
  'hose-spacing': rule('hose-spacing'),
  rubber: { numbers: [mmToInches(JOINT_GAPS.rubber.gapMm), 1.6], source: JOINT_GAPS.rubber.source },
  fluoropolymer: {
    numbers: [mmToInches(JOINT_GAPS.fluoropolymer.gapMm), 0.64],
    source: JOINT_GAPS.fluoropolymer.source,
  },
  'anti-static': { numbers: [ANTI_STATIC_OHM] },
  'static-conductivity': { ...rule('static-conductivity'), numbers: [2.5, ...rule('static-conductivity').numbers] },
  'drain-outlet-tilt': rule('drain-outlet-tilt'),
  'drain-outlet-limit': rule('drain-outlet-limit'),
  'drain-way-tilt': rule('drain-way-tilt'),
  'drain-shaft-level': rule('drain-shaft-level'),
  'drain-least-dash-maker': rule('drain-least-dash', -1),
  'drain-least-dash': { ...rule('drain-least-dash', -1), numbers: [...rule('drain-least-dash', -1).numbers, -12] },
};
