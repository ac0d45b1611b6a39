import { expect, it } from 'vitest';
import type { Vec3 } from '../../../../shared/base/vec3.ts';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import { motionsAt } from '../../../../shared/document/lay/motionsAt.ts';
import type { Port } from '../../../../shared/document/project/schema.ts';
import { Motion, PLAIN_SKIN } from '../../../../shared/document/project/schema.ts';
import { movePoint, type RigidMotion, turnDirection } from '../../../../shared/geometry/rigidMotion.ts';
import type { TriMesh } from '../../../../shared/geometry/triMesh.ts';
import { buildBayIndex } from '../../../../shared/solve/bay/bayIndex.ts';
import { buildTubeField } from '../../../../shared/solve/bay/tubeField.ts';
import { layRun } from '../../../../shared/solve/layRun/layRun.ts';
import { bodyBays } from '../../../../shared/solve/rock/bodyBays.ts';
import { rockLays } from '../../../../shared/solve/rock/rockLays.ts';
import { blockBay } from '../../../arbitraries/blockBays.ts';

const NO_OTHERS = buildTubeField([]);
/** The far plate, on which END B stands. */
const PLATE = 'block-1';
/** mm. What two searches of one way differ by, and what a gain of the first order in the movement leaves out. */
const TOLERANCE_MM = 0.3;

function triple([x, y, z]: Vec3): [number, number, number] {
  return [x, y, z];
}

function movedPort(port: Port, motion: RigidMotion): Port {
  return {
    ...port,
    seatPoint: triple(movePoint(motion, port.seatPoint)),
    axis: triple(turnDirection(motion, port.axis)),
    up: triple(turnDirection(motion, port.up)),
  };
}

function movedPlate(mesh: TriMesh, motion: RigidMotion): TriMesh {
  const positions = mesh.positions.slice();
  // Corners 8 to 15 are the second block's.
  for (let i = 8; i < 16; i++)
    positions.set(movePoint(motion, [positions[3 * i]!, positions[3 * i + 1]!, positions[3 * i + 2]!]), 3 * i);
  return { ...mesh, positions };
}

// Slow oracle: the shortest lay in the moved bay, searched from nothing, with the ends at the clocks they were tightened at. In
// bays where no clamp is proposed: the search would not know of it.
it.each([8, 21, 56, 61])(
  'slack left is the live length less the shortest lay that a search finds in the moved bay, seed %i',
  (seed) => {
    const { mesh, bay, project: found } = blockBay(seed, 9, 1);
    const { project } = found;
    const motion = Motion.parse({ pivot: [700, 300, 200], rollDeg: [-2, 0], yawDeg: [0, 2], shiftMm: { x: [0, 6] } });
    project.bay.bodies.push({ id: 'engine', name: 'Engine', parts: [PLATE], motion });
    const [first] = found.runs;
    if (first === undefined) throw new Error('no run');
    const run = { ...first, b: { ...first.b, port: { ...first.b.port, body: 'engine' } } };
    const lay = layRun({ project, bay }, run, NO_OTHERS, UNWATCHED);
    expect(lay.supports).toEqual([]);
    const [out] = rockLays({ project, runs: [run] }, bodyBays(project, mesh, UNWATCHED), [lay], UNWATCHED);
    const extremes = out?.rock?.extremes ?? [];
    expect(extremes.length).toBe(8);
    for (const extreme of extremes.filter((_, i) => i % 3 === 1)) {
      const engine = motionsAt(project, extreme.pose, 1)('engine');
      const there = {
        ...run,
        a: { ...run.a, clockDeg: lay.ends.a.ownClockDeg },
        b: { ...run.b, port: movedPort(run.b.port, engine), clockDeg: lay.ends.b.ownClockDeg },
      };
      const moved = buildBayIndex(movedPlate(mesh, engine), () => PLAIN_SKIN, UNWATCHED);
      const searched = layRun({ project, bay: moved }, there, NO_OTHERS, UNWATCHED);
      expect(Math.abs(lay.liveLengthMm - extreme.slackLeftMm - searched.tautLengthMm)).toBeLessThan(TOLERANCE_MM);
    }
  },
);
