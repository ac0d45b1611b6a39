import { type Frame, moved, place } from './frame.ts';
import { lathe } from './lathe.ts';
import { hexagon, type Outline } from './outline.ts';
import { skin } from './skin.ts';
import { join, type Solid } from './solid.ts';

/** A hexagon prism with a chamfered top, on the frame. */
export function hexHead(frame: Frame, acrossFlats: number, height: number): Solid {
  const outline = hexagon(acrossFlats, 2);
  const ring = (along: number, shape: Outline) => shape.map(([u, v]) => place(frame, along, u, v));
  const within = (most: number): Outline =>
    outline.map(([u, v]) => {
      const r = Math.hypot(u, v);
      const f = Math.min(1, most / r);
      return [u * f, v * f] as const;
    });
  return skin([
    ring(0, outline),
    ring(height * 0.82, outline),
    ring(height * 0.94, within(acrossFlats * 0.53)),
    ring(height, within(acrossFlats * 0.47)),
  ]);
}

/** A washer and a hex head; the frame's axis points out of the work. `size` = thread diameter, mm. */
export function bolt(frame: Frame, size = 8): Solid {
  const washer = lathe(
    frame,
    [
      [-0.5, size * 0.95],
      [size * 0.2, size * 1.0],
      [size * 0.2, size * 0.6],
    ],
    14,
  );
  return join(washer, hexHead(moved(frame, size * 0.18), size * 1.6, size * 0.65));
}

/** A cap screw: a round head with a hexagon socket in it. */
export function capScrew(frame: Frame, size = 6): Solid {
  const count = 12;
  const round = (along: number, radius: number) =>
    Array.from({ length: count }, (_, k) => {
      const a = (2 * Math.PI * k) / count;
      return place(frame, along, radius * Math.cos(a), radius * Math.sin(a));
    });
  const socket = (along: number) => hexagon(size * 0.85, 2).map(([u, v]) => place(frame, along, u, v));
  return skin([
    round(-0.5, size * 0.8),
    round(size * 0.9, size * 0.8),
    round(size, size * 0.7),
    socket(size),
    socket(size * 0.45),
  ]);
}

/** Bolts on a circle round the frame's axis, `count` of them, the first at `fromDeg` from up. */
export function boltCircle(frame: Frame, radius: number, count: number, size: number, fromDeg = 0): Solid {
  return join(
    ...Array.from({ length: count }, (_, k) => {
      const a = ((fromDeg + (360 * k) / count) * Math.PI) / 180;
      return bolt(moved(frame, 0, radius * Math.sin(a), radius * Math.cos(a)), size);
    }),
  );
}
