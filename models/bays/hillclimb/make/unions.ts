import { frameAt } from '../../../shapes/frame.ts';
import { lathe } from '../../../shapes/lathe.ts';
import { type Part, part } from '../../../shapes/part.ts';
import { threadRadiusMm, union } from '../../../shapes/union.ts';
import { type BayPort, PORTS } from './ports.ts';

/** A union at every port, on its cast boss, each a part named after its port. */
export function unions(): Part[] {
  return PORTS.map((port) =>
    part(`${port.id}-union`, 'machined', union(port.seatPoint, port.axis, port.dash, port.standMm)),
  );
}

/** The cast bosses the unions are screwed into, to be joined to the part that carries them. */
export function bossOf(port: BayPort) {
  const frame = frameAt(port.seatPoint, port.axis);
  const radius = threadRadiusMm(port.dash) * 1.75;
  return lathe(
    frame,
    [
      [-port.standMm - port.bossMm, radius * 1.35],
      [-port.standMm - port.bossMm * 0.4, radius * 1.04],
      [-port.standMm - 1.2, radius],
      [-port.standMm, radius - 1.2],
    ],
    24,
  );
}
