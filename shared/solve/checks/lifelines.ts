import type { Purpose } from '../../document/project/schema.ts';

/** Hoses whose loss burns the car or the engine in seconds. */
export const LIFELINES: readonly Purpose[] = [
  'fuel',
  'turbo-oil-feed',
  'oil-pressure',
  'oil-suction',
  'oil-cooler',
  'oil-return',
];
