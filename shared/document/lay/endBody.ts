import type { Vec3 } from '../../base/vec3.ts';
import type { AdapterPose, EndPose } from './schema.ts';

/** What is needed of an end as it is told. */
export type EndPlaces = Pick<EndPose, 'seatPoint' | 'bendPoint' | 'shoulderPoint' | 'mouthPoint' | 'body' | 'adapters'>;

/** The middle of an end from its seat to its mouth; the last two places are shoulder and mouth. mm, bay frame. */
export function endBody({ body, seatPoint, bendPoint, shoulderPoint, mouthPoint }: EndPlaces): readonly Vec3[] {
  return body ?? [seatPoint, bendPoint, shoulderPoint, mouthPoint];
}

/**
 * The way fluid takes from the port's own seat to a hose: through what is screwed on it and through the end, up to the
 * shoulder and without it. mm, bay frame.
 */
export function portToShoulder(adapters: readonly Pick<AdapterPose, 'points'>[], body: readonly Vec3[]): Vec3[] {
  return [...adapters.flatMap(({ points }) => points.slice(0, -1)), ...body.slice(0, -2)];
}
