/** The nine hoses of the example bay whose heat is timed, and looked at with half the rays. */
export const NINE_HEATED = [
  'turbo-oil-feed',
  'turbo-water-feed',
  'turbo-water-return',
  'oil-suction',
  'scavenge-return',
  'cooler-feed',
  'cooler-return',
  'crankcase-breather',
  'fuel-feed',
] as const;
