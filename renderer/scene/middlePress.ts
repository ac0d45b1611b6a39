import { distance, type Vec3 } from '../../shared/base/vec3.ts';

/** mm. The eye has not been moved between two presses of a key. */
const SAME_PLACE_MM = 0.01;

interface MiddlePlaces {
  /** what lies in the middle of the picture; null = nothing of the bay */
  readonly there: Vec3 | null;
  /** marked by the press before */
  readonly marked: Vec3 | null;
  /** taken last, by this key with this tool */
  readonly taken: Vec3 | null;
}

/**
 * What a press of the key does that points at the middle of the picture: mark the place, take it where it is marked, or
 * nothing where it was just taken and the look has not been moved since.
 */
export function middlePress({ there, marked, taken }: MiddlePlaces): 'mark' | 'take' | 'taken' {
  if (there === null) return 'mark';
  const isThere = (place: Vec3 | null): boolean => place !== null && distance(place, there) < SAME_PLACE_MM;
  return isThere(taken) ? 'taken' : isThere(marked) ? 'take' : 'mark';
}
