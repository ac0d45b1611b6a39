import { CHASSIS_BODY } from '../../document/project/schema.ts';
import { movePoint, type RigidMotion, turnDirection } from '../../geometry/rigidMotion.ts';
import type { PortFrame } from '../ends/endPose.ts';
import type { RunSetting } from '../layRun/runSetting.ts';
import type { HeldHose } from './heldHose.ts';
import type { Motions } from './movedBay.ts';

/** The run with its ports and supports where they stand then: what measuring asks held places and tails of. */
export function movedSetting({ setting, resolved }: HeldHose, motions: Motions): RunSetting {
  const bodyOf = (body: string | undefined): RigidMotion => motions(body ?? CHASSIS_BODY.id);
  return {
    ...setting,
    a: { ...setting.a, port: movedPort(setting.a.port, bodyOf(resolved.a.port.body)) },
    b: { ...setting.b, port: movedPort(setting.b.port, bodyOf(resolved.b.port.body)) },
    supports: setting.supports.map((s) => {
      const [x, y, z] = movePoint(bodyOf(s.body), s.point);
      return { ...s, point: [x, y, z] };
    }),
  };
}

function movedPort({ seatPoint, axis, up }: PortFrame, motion: RigidMotion): PortFrame {
  return {
    seatPoint: movePoint(motion, seatPoint),
    axis: turnDirection(motion, axis),
    up: turnDirection(motion, up),
  };
}
