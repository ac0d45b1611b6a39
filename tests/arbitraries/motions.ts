import type { Motion } from '../../shared/document/project/schema.ts';

const STILL: [number, number] = [0, 0];

/** What of a body's motion is stated; all else stands still. Turns in degrees about the pivot, shifts in mm. */
type Stated = Partial<Omit<Motion, 'pivot' | 'shiftMm'>> & { readonly shiftMm?: Partial<Motion['shiftMm']> };

/** The motion of a body about a pivot, mm, bay frame. */
export function motionAbout(pivot: Motion['pivot'], { shiftMm, ...turns }: Stated): Motion {
  return {
    pivot,
    rollDeg: STILL,
    pitchDeg: STILL,
    yawDeg: STILL,
    ...turns,
    shiftMm: { x: STILL, y: STILL, z: STILL, ...shiftMm },
  };
}
