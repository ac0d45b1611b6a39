import { describe, expect, it } from 'vitest';
import { UNWATCHED } from '../../../../shared/base/watch.ts';
import type { Lay } from '../../../../shared/document/lay/schema.ts';
import { buildTubeField } from '../../../../shared/solve/bay/tubeField.ts';
import { layRun } from '../../../../shared/solve/layRun/layRun.ts';
import { emptyBay, exampleEnd, exampleHose, examplePort, oneRunProject } from '../../../arbitraries/rig.ts';

const BAY = emptyBay();
const END = exampleEnd(0, { seatToBendMm: 0, bendToShoulderMm: 20, shoulderToMouthMm: 15 });

function lay(
  apart: number,
  run: Parameters<typeof oneRunProject>[3],
  axisB: [number, number, number] = [-1, 0, 0],
): Lay {
  const a = examplePort('a', {});
  const b = examplePort('b', { seatPoint: [apart + 70, 0, 0], axis: axisB });
  const resolved = oneRunProject([a, b], [END, END], exampleHose({ minBendRadiusMm: 60 }), run);
  return layRun({ project: resolved.project, bay: BAY }, resolved.runs[0]!, buildTubeField([]), UNWATCHED);
}

describe('a hose already cut', () => {
  it('that reaches is laid at its own length, its slack measured', () => {
    const l = lay(400, { cutLengthMm: 400 * 1.06 + 30 });
    expect(l.outcome).toBe('laid');
    expect(l.cutLengthMm).toBeCloseTo(400 * 1.06 + 30, 3);
    expect(l.slack).toBeCloseTo(0.06, 4);
  });

  it('that is too short is never called laid, and says by how much', () => {
    const l = lay(400, { cutLengthMm: 400 });
    expect(l.outcome).toBe('near-miss');
    expect(l.reason).toMatch(/too short by 30 mm/); // mouths 400 apart and two sockets of 15
  });

  it('that is far too long still has its own length and an honest answer', () => {
    const l = lay(300, { cutLengthMm: 900 });
    expect(l.cutLengthMm).toBeCloseTo(900, 2);
    expect(l.slack).toBeGreaterThan(1.5);
  });
});

describe('ends that hardly leave room', () => {
  it.each([5, 30, 60])('face to face with mouths %d mm apart: an answer with its reason, no failure', (apart) => {
    const l = lay(apart, {});
    if (l.outcome !== 'laid') expect(l.reason).toBeTruthy();
    expect(Number.isFinite(l.cutLengthMm)).toBe(true);
  });

  it('side by side, both facing the same way', () => {
    const a = examplePort('a', {});
    const b = examplePort('b', { seatPoint: [0, 60, 0] });
    const resolved = oneRunProject([a, b], [END, END], exampleHose({ minBendRadiusMm: 60 }), {});
    const l = layRun({ project: resolved.project, bay: BAY }, resolved.runs[0]!, buildTubeField([]), UNWATCHED);
    if (l.outcome !== 'laid') expect(l.reason).toBeTruthy();
    expect(Number.isFinite(l.cutLengthMm)).toBe(true);
  });
});

describe('a hose under pressure (+2 % and -4 % of its length, FAA AC 43.13-1B Fig. 9-9)', () => {
  it('of 5 % slack keeps some at -4 %, and is measured at both lengths', () => {
    const l = lay(400, { slack: 0.05 });
    expect(l.breathing?.map((b) => [b.change, b.taut])).toEqual([
      [0.02, false],
      [-0.04, false],
    ]);
    for (const breath of l.breathing ?? []) {
      expect(breath.liveLengthMm).toBeCloseTo(l.liveLengthMm * (1 + breath.change), 6);
      // Nearly straight again at -4 %: 0.8 % of slack is left, so it bends far less than at +2 %.
      expect(breath.minRadius!.provenAtLeastMm).toBeGreaterThan(60);
    }
    const [longer, shorter] = l.breathing!;
    expect(shorter!.minRadius!.provenAtLeastMm).toBeGreaterThan(longer!.minRadius!.provenAtLeastMm);
  });

  it('already cut with 3 % slack goes taut at -4 %: 4.2 % is the least that does not (1 / 0.96 - 1)', () => {
    const { cutLengthMm, tautLengthMm } = lay(400, { slack: 0.05 });
    const goesTaut = (slack: number): boolean | undefined =>
      lay(400, { cutLengthMm: cutLengthMm + tautLengthMm * (slack - 0.05) }).breathing?.at(-1)?.taut;
    expect(goesTaut(0.03)).toBe(true);
    expect(goesTaut(0.041)).toBe(true);
    expect(goesTaut(0.042)).toBe(false);
  });

  it('still to be cut is given the slack it needs not to go taut', () => {
    const l = lay(400, { slack: 0.03 });
    expect(l.breathing?.map((b) => b.taut)).toEqual([false, false]);
    expect(l.slack).toBeGreaterThan(1 / 0.96 - 1);
  });
});
