import { FUELS } from '../parts/fluids.ts';
import type { End } from '../parts/schema.ts';
import type { Service, Vehicle } from '../project/schema.ts';

/** What of a run says which of its joints have to be seen again. */
interface Joined {
  readonly run: { readonly service: Pick<Service, 'purpose' | 'fluid'> };
  readonly a: { readonly end: Pick<End, 'joint'> };
  readonly b: { readonly end: Pick<End, 'joint'> };
}

const SIDES = ['a', 'b'] as const;

/** Whether a boat's code asks that every joint of this hose can be come at: fuel, and what the engine breathes out. */
export function asksForAccess({ run: { service } }: Pick<Joined, 'run'>, vehicle: Vehicle | undefined): boolean {
  return vehicle === 'boat' && (FUELS.includes(service.fluid) || service.purpose === 'wet-exhaust');
}

/** The ends whose joints a hand should reach when a hose is looked over: those that hose clamps hold, and on a boat all of fuel and exhaust. */
export function leakyJoints(joined: Joined, vehicle: Vehicle | undefined): readonly ('a' | 'b')[] {
  return SIDES.filter((side) => joined[side].end.joint === 'clamped' || asksForAccess(joined, vehicle));
}
