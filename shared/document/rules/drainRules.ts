import { NO_SOURCE, type Rule } from './rule.ts';

const DRAINAGE_PAGE = 'turbo maker, garrettmotion.com, turbocharger oil drainage';
const NO_LEVEL =
  'turbo makers: no level spots or upturns (emissions.borgwarner.com tech tip of 2019-10-29); no undulations, no extended lengths parallel to the ground (garrettmotion.com, turbocharger oil drainage)';
const ABOVE_OIL =
  'turbo makers: not below the oil level (garrettmotion.com, turbocharger oil drainage); into the pan above the static oil line (emissions.borgwarner.com tech tip of 2019-10-29)';

/** Hoses that must fall or that must not trap air: turbo oil drains and coolant. */
export const DRAIN_RULES: readonly Rule[] = [
  {
    id: 'drain-outlet-tilt',
    title: 'Tilt of a turbo drain outlet from straight down',
    value: 15,
    unit: 'deg',
    source: `${DRAINAGE_PAGE}: follows gravity within 15 degrees`,
    grade: 'published',
    dissent: 'other makers: 30 degrees (from memory)',
    overridable: true,
  },
  {
    id: 'drain-outlet-limit',
    title: 'Tilt of a turbo drain outlet past which turbos leak',
    value: 35,
    unit: 'deg',
    source:
      'turbo maker, garrettmotion.com, oil leakage troubleshooting: drain rotated past the recommended 35 degrees',
    grade: 'published',
    overridable: false,
  },
  {
    id: 'drain-no-rise',
    title: 'Fall below which a turbo drain counts as level or rising',
    value: 0,
    unit: 'deg',
    source: NO_LEVEL,
    grade: 'published',
    overridable: false,
  },
  {
    id: 'drain-least-fall',
    title: 'Least fall of a turbo drain',
    value: 5,
    unit: 'deg',
    source: `${NO_SOURCE}; makers ask only that no stretch be level`,
    grade: 'common-practice',
    dissent: NO_LEVEL,
    overridable: true,
  },
  {
    id: 'drain-end-angle',
    title: 'Bend angle of an end on a turbo drain',
    value: 0,
    unit: 'deg',
    source: 'bullseyepower.com, oil drain tech: avoid 45 and 90 degree fittings',
    grade: 'published',
    dissent: 'emissions.borgwarner.com tech tip of 2019-10-29: avoid 90 degree bends',
    overridable: true,
  },
  {
    id: 'drain-least-dash',
    title: 'Least dash size of a turbo drain',
    value: 10,
    unit: 'dash',
    source:
      'bullseyepower.com, oil drain tech: at least -10 for small and mid frames; garrettmotion.com: -10 is typically enough',
    grade: 'published',
    dissent:
      "bullseyepower.com: -12 for large frames; and never a bore below the housing's drain hole (garrettmotion.com)",
    overridable: true,
  },
  {
    id: 'drain-bore',
    title: "Bore of a turbo drain over the housing's drain hole, at least",
    value: 1,
    unit: 'ratio',
    source: `${DRAINAGE_PAGE}: never a smaller inside diameter than the drain hole of the housing`,
    grade: 'published',
    overridable: true,
  },
  {
    id: 'drain-shaft-level',
    title: "Tilt of a turbo's shaft from level",
    value: 15,
    unit: 'deg',
    source: `${DRAINAGE_PAGE}: shaft parallel to the ground within 15 degrees`,
    grade: 'published',
    overridable: true,
  },
  {
    id: 'drain-way-tilt',
    title: 'Lean of a whole turbo drain, seat to seat, from straight down',
    value: 15,
    unit: 'deg',
    source: `${DRAINAGE_PAGE}: follows gravity within 15 degrees, said of the outlet; held to the whole drain by inference`,
    grade: 'published',
    dissent:
      'the same maker, oil leakage troubleshooting: leaks come past 35 degrees, said of the outlet too; that a drain only fall all the way: emissions.borgwarner.com tech tip of 2019-10-29',
    overridable: true,
  },
  {
    id: 'drain-level-known',
    title: 'Whether the oil level that a drain must enter above is stated',
    value: 1,
    unit: 'count',
    source: ABOVE_OIL,
    grade: 'published',
    overridable: true,
  },
  {
    id: 'drain-above-oil',
    title: "Height of a drain's entry above the oil, at rest",
    value: 0,
    unit: 'mm',
    source: ABOVE_OIL,
    grade: 'published',
    dissent: 'one unsigned article (gadomo.com) ends the drain below the oil; every maker found says above',
    overridable: false,
  },
  {
    id: 'drain-above-oil-leaning',
    title: "Height of a drain's entry above the oil, leaning or driven",
    value: 0,
    unit: 'mm',
    source: `${ABOVE_OIL}; said of oil at rest, held to a leaning or driven bay by inference`,
    grade: 'published',
    overridable: true,
  },
  {
    id: 'drain-falls-leaning',
    title: 'Fall of a turbo drain where the bay leans or is driven',
    value: 0,
    unit: 'deg',
    source: `${NO_SOURCE} for a bay that leans; makers speak of a level car`,
    grade: 'common-practice',
    dissent: NO_LEVEL,
    overridable: true,
  },
  {
    id: 'coolant-high-point',
    title: 'Height of a hump that traps air in a coolant hose',
    value: 5,
    unit: 'mm',
    source: `${NO_SOURCE} for the height; that the highest point must be the cap or a bleed: c3sharktank.com, cooling notes`,
    grade: 'common-practice',
    overridable: true,
  },
];
