import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../../shared/document/lay/schema.ts';
import type { ResolvedProject } from '../../../../shared/document/project/resolve.ts';
import type { Bundle } from '../../../../shared/document/project/schema.ts';
import { clearanceTo, straightLay } from '../../../arbitraries/lays.ts';
import { samplePort, sampleRun } from '../../../arbitraries/projects.ts';
import { findingsOf, resolved } from './context.ts';

const OIL: Bundle = { id: 'oil', name: 'Oil lines', runs: ['r1', 'r2'] };

function pair(bundles: Bundle[], pressures: [number, number] = [500, 500]): ResolvedProject {
  const runs = pressures.map((pressureKpa, i) =>
    sampleRun({
      id: `r${i + 1}`,
      name: `Run ${i + 1}`,
      a: { port: `p${2 * i + 1}`, end: 'end-8-0' },
      b: { port: `p${2 * i + 2}`, end: 'end-8-0' },
      service: { ...sampleRun().service, pressureKpa },
    }),
  );
  const ports = Array.from({ length: 4 }, (_, i) => samplePort({ id: `p${i + 1}`, seatPoint: [0, 100 * i, 0] }));
  return resolved({ runs, ports, bundles });
}

const near = (mm: number) => straightLay({ clearances: [clearanceTo({ kind: 'run', id: 'r2' }, mm, 0)] });
const told = (found: Finding[]): string[] => found.map((f) => `${f.severity} ${f.check}`);

describe('hoses of a bundle', () => {
  it('may lie side by side: a note says on whose word, where other hoses are looked at', () => {
    expect(told(findingsOf('clearance', pair([]), near(1)))).toEqual(['look clearance']);
    const [note] = findingsOf('clearance', pair([OIL]), near(1));
    expect(note).toMatchObject({ severity: 'note', limit: 0, overrideReason: expect.stringContaining('Oil lines') });
    expect(findingsOf('clearance', pair([OIL]), near(12.1))).toEqual([]);
  });

  it('turns at the gap of the bundle', () => {
    const gap = pair([{ ...OIL, gapMm: 3 }]);
    expect(told(findingsOf('clearance', gap, near(3.06)))).toEqual(['note clearance']);
    expect(told(findingsOf('clearance', gap, near(2.9)))).toEqual(['look clearance']);
  });

  it('that pass through each other forbid cutting all the same', () => {
    expect(told(findingsOf('clearance', pair([OIL]), near(-1)))).toEqual(['stop clearance']);
  });

  it('bare braid on a tied hose is a note, not a thing to look at', () => {
    expect(told(findingsOf('chafe', pair([]), near(1)))).toEqual(['look chafe']);
    expect(told(findingsOf('chafe', pair([OIL]), near(1)))).toEqual(['note chafe']);
  });

  it('are of like pressure, to 1000 kPa, told once a pair', () => {
    const lays = (p: ResolvedProject): Finding[] => [
      ...findingsOf('bundlePressure', p, straightLay()),
      ...findingsOf('bundlePressure', p, straightLay({ run: 'r2' })),
    ];
    expect(lays(pair([OIL], [500, 1500]))).toEqual([]);
    expect(lays(pair([OIL], [500, 1501]))).toMatchObject([
      { severity: 'look', run: 'r1', with: { kind: 'run', id: 'r2' }, measured: 1001 },
    ]);
    expect(lays(pair([], [500, 5000]))).toEqual([]);
  });
});
