/** What a hose may carry: the fluids that a run states and a hose is listed for. */
export const FLUIDS = [
  'engine-oil',
  'petrol',
  'e85',
  'methanol',
  'avgas',
  'diesel',
  'coolant',
  'raw-water',
  'exhaust-water',
  'air',
  'other',
] as const;

/** Those that burn an engine bay when they leak. */
export const FUELS: readonly (typeof FLUIDS)[number][] = ['petrol', 'e85', 'methanol', 'avgas', 'diesel'];
