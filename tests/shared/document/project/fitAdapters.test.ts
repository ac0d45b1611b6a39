import { describe, expect, it } from 'vitest';
import { cross, distance, dot, turnAbout, unit, type Vec3 } from '../../../../shared/base/vec3.ts';
import type { Adapter } from '../../../../shared/document/parts/schema.ts';
import { fitAdapters, type SeatFrame, type StackedAdapter } from '../../../../shared/document/project/fitAdapters.ts';
import { exampleAdapter } from '../../../arbitraries/adapters.ts';

const PORT: SeatFrame = { seatPoint: [100, 0, 0], axis: [0, 0, 1], up: [1, 0, 0] };

function stacked(adapter: Partial<Adapter>, clockDeg = 0, outlet: 'straight' | 'branch' = 'straight'): StackedAdapter {
  return { adapter: exampleAdapter(adapter), use: { adapter: 'example', outlet, clockDeg } };
}

function last(port: SeatFrame, stack: readonly StackedAdapter[]): SeatFrame {
  return fitAdapters(port, stack).at(-1)?.to ?? port;
}

function close(a: Vec3, b: Vec3): void {
  expect(distance(a, b)).toBeLessThan(1e-11 * 1000);
}

describe('fitAdapters', () => {
  it('sets a straight one in line and leaves axis and 12 o’clock, whatever its clock', () => {
    const to = last(PORT, [stacked({ portToBendMm: 12, bendToSeatMm: 23 }, 77)]);
    close(to.seatPoint, [100, 0, 35]);
    expect(to.axis).toEqual(PORT.axis);
    expect(to.up).toEqual(PORT.up);
  });

  it('turns an elbow to its clock, clockwise seen looking out, and carries 12 o’clock along', () => {
    const elbow = { form: 'elbow' as const, bendAngleDeg: 90, portToBendMm: 20, bendToSeatMm: 25 };
    const up = last(PORT, [stacked(elbow)]);
    close(up.seatPoint, [125, 0, 20]);
    close(up.axis, [1, 0, 0]);
    close(up.up, [0, 0, -1]);
    // Looking along +z with +x up, the right hand is axis x up = +y.
    const right = last(PORT, [stacked(elbow, 90)]);
    close(right.seatPoint, [100, 25, 20]);
    close(right.axis, [0, 1, 0]);
    close(right.up, [1, 0, 0]);
    const half = last(PORT, [stacked({ ...elbow, bendAngleDeg: 45 })]);
    close(half.axis, [Math.SQRT1_2, 0, Math.SQRT1_2]);
    close(half.up, [Math.SQRT1_2, 0, -Math.SQRT1_2]);
  });

  // A closed square: displacements p (a0 + a1 + a2 + a3) + s (a1 + a2 + a3 + a0) with the four axes adding up to nothing.
  it('comes back after four elbows of 90 degrees that all bend on', () => {
    const elbow = stacked({ form: 'elbow', bendAngleDeg: 90, portToBendMm: 20, bendToSeatMm: 25 });
    const to = last(PORT, [elbow, elbow, elbow, elbow]);
    close(to.seatPoint, PORT.seatPoint);
    close(to.axis, PORT.axis);
    close(to.up, PORT.up);
  });

  // A regular polygon of n corners turns by 360 / n at each; any bend and any lengths close it.
  it.each([3, 5, 6, 8, 12])('comes back after %d elbows that turn a whole turn together', (count) => {
    const elbow = stacked({ form: 'elbow', bendAngleDeg: 360 / count, portToBendMm: 31, bendToSeatMm: 17 }, 0);
    const to = last(PORT, Array(count).fill(elbow));
    close(to.seatPoint, PORT.seatPoint);
    close(to.axis, PORT.axis);
    close(to.up, PORT.up);
  });

  it('bends back with clock 180: two elbows make an offset', () => {
    const elbow = { form: 'elbow' as const, bendAngleDeg: 45, portToBendMm: 20, bendToSeatMm: 20 };
    const to = last(PORT, [stacked(elbow), stacked(elbow, 180)]);
    close(to.axis, PORT.axis);
    close(to.up, PORT.up);
    // 20 straight on, 40 at 45 degrees, 20 straight on.
    close(to.seatPoint, [100 + 40 * Math.SQRT1_2, 0, 40 + 40 * Math.SQRT1_2]);
  });

  it('goes on from either outlet of a tee and shows the other', () => {
    const tee = { form: 'tee' as const, portToBendMm: 20, bendToSeatMm: 22, branchAngleDeg: 60, branchToSeatMm: 30 };
    const [through] = fitAdapters(PORT, [stacked(tee, 90)]);
    const [aside] = fitAdapters(PORT, [stacked(tee, 90, 'branch')]);
    close(through?.to.seatPoint ?? [0, 0, 0], [100, 0, 42]);
    close(aside?.to.seatPoint ?? [0, 0, 0], [100, 30 * Math.sin(Math.PI / 3), 20 + 15]);
    close(aside?.to.axis ?? [0, 0, 0], [0, Math.sin(Math.PI / 3), 0.5]);
    expect(through?.branch?.[1]).toEqual(aside?.to.seatPoint);
    expect(aside?.branch?.[1]).toEqual(through?.to.seatPoint);
  });

  it('stands a taper thread at the middle of its range, or at the clock asked for', () => {
    const elbow = exampleAdapter({ form: 'elbow', bendAngleDeg: 90, turning: 'taper' });
    const stack: StackedAdapter[] = [
      { adapter: elbow, use: { adapter: elbow.id, outlet: 'straight', clockRangeDeg: [60, 120] } },
    ];
    close(last(PORT, stack).axis, [0, 1, 0]);
    close(fitAdapters(PORT, stack, [180]).at(-1)?.to.axis ?? [0, 0, 0], [-1, 0, 0]);
  });

  it('turns and moves with the port, and stays square and unit up the stack', () => {
    const axis = unit([0.3, -0.7, 0.5]);
    const turn = (v: Vec3): Vec3 => turnAbout(v, axis, 1.234);
    const stack = [
      stacked({ form: 'elbow', bendAngleDeg: 90 }, 33),
      stacked({ form: 'straight' }, 12),
      stacked({ form: 'elbow', bendAngleDeg: 30 }, 250),
      stacked({ form: 'tee', branchToSeatMm: 18 }, 71, 'branch'),
    ];
    const plain = last({ seatPoint: [0, 0, 0], axis: [0, 0, 1], up: [1, 0, 0] }, stack);
    const turned = last({ seatPoint: [7, 8, 9], axis: turn([0, 0, 1]), up: turn([1, 0, 0]) }, stack);
    close(turned.axis, turn(plain.axis));
    close(turned.up, turn(plain.up));
    const [x, y, z] = turn(plain.seatPoint);
    close(turned.seatPoint, [x + 7, y + 8, z + 9]);
    expect(dot(plain.axis, plain.up)).toBeCloseTo(0, 13);
    expect(dot(cross(plain.axis, plain.up), cross(plain.axis, plain.up))).toBeCloseTo(1, 13);
  });
});
