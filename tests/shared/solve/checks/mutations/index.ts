import { BENCH_MUTATIONS } from './bench.ts';
import { BOAT_MUTATIONS } from './boat.ts';
import { DRAIN_MUTATIONS } from './drains.ts';
import { FLOWING_MUTATIONS } from './flowing.ts';
import { HOT_MUTATIONS } from './hot.ts';
import { MADE_MUTATIONS } from './made.ts';
import { MATERIAL_MUTATIONS } from './material.ts';
import type { Mutation } from './mutation.ts';
import { NEAR_MUTATIONS } from './near.ts';
import { SHAPE_MUTATIONS } from './shape.ts';
import { TURBO_MUTATIONS } from './turbo.ts';

/** Every kind of finding with a project in which it comes and goes. A new kind is a row in its subject's file, or a file of its own named here. */
export const MUTATIONS: readonly Mutation[] = [
  ...SHAPE_MUTATIONS,
  ...MADE_MUTATIONS,
  ...BENCH_MUTATIONS,
  ...NEAR_MUTATIONS,
  ...HOT_MUTATIONS,
  ...DRAIN_MUTATIONS,
  ...TURBO_MUTATIONS,
  ...FLOWING_MUTATIONS,
  ...MATERIAL_MUTATIONS,
  ...BOAT_MUTATIONS,
];
