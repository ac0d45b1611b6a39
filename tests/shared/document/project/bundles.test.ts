import { describe, expect, it } from 'vitest';
import { describeProblem } from '../../../../shared/base/result.ts';
import { parseProject } from '../../../../shared/document/project/parseProject.ts';
import type { Bundle, Project, Run } from '../../../../shared/document/project/schema.ts';
import { requiredRunClearance } from '../../../../shared/document/rules/requiredClearance.ts';
import { samplePort, sampleProject, sampleRun } from '../../../arbitraries/projects.ts';

const RUNS: Run[] = ['r1', 'r2', 'r3'].map((id, i) =>
  sampleRun({ id, a: { port: `p${2 * i + 1}`, end: 'end-8-0' }, b: { port: `p${2 * i + 2}`, end: 'end-8-0' } }),
);
const PORTS = Array.from({ length: 6 }, (_, i) => samplePort({ id: `p${i + 1}`, seatPoint: [0, 100 * i, 0] }));

function project(bundles: Bundle[], more: Partial<Project> = {}): Project {
  return sampleProject({ runs: RUNS, ports: PORTS, bundles, ...more });
}

function problems(p: Project): string[] {
  const result = parseProject(JSON.stringify(p));
  return result.ok ? [] : result.problems.map(describeProblem);
}

const OIL: Bundle = { id: 'oil', name: 'Oil lines', runs: ['r1', 'r2'] };

describe('bundles', () => {
  it('are read, and refused where a run is unknown, in two of them, or there is but one', () => {
    expect(problems(project([OIL]))).toEqual([]);
    expect(problems(project([{ ...OIL, runs: ['r1', 'r9'] }]))[0]).toMatch(
      /^bundles\[0\]\.runs\[1\]: no run has this id/,
    );
    expect(problems(project([OIL, { ...OIL, id: 'other', runs: ['r2', 'r3'] }]))[0]).toMatch(
      /^bundles\[1\]\.runs\[0\]: a run is in one bundle, once/,
    );
    expect(problems(project([OIL, OIL])).join()).toContain('the id is taken');
    expect(problems(project([{ ...OIL, runs: ['r1'] }]))).toHaveLength(1);
    expect(problems(project([{ ...OIL, gapMm: -1 }]))).toHaveLength(1);
  });

  it('ask their gap between their hoses, without the scan uncertainty, and the spacing from all others', () => {
    const base = sampleProject();
    const p = project([{ ...OIL, gapMm: 3 }], { bay: { ...base.bay, scanUncertaintyMm: 1.5 } });
    expect(requiredRunClearance(p, 'r1', 'r2')).toMatchObject({ requiredMm: 3, statedMm: 3 });
    expect(requiredRunClearance(p, 'r2', 'r1').requiredMm).toBe(3);
    expect(requiredRunClearance(project([OIL]), 'r1', 'r2').requiredMm).toBe(0);
    expect(requiredRunClearance(p, 'r1', 'r3')).toMatchObject({ requiredMm: 13.5 });
    expect(requiredRunClearance(p, 'r1', 'r3').statedMm).toBeUndefined();
    expect(requiredRunClearance(p, 'r1', 'r1').requiredMm).toBe(13.5);
  });

  it('a stretch in one plane begins at END A or at what holds the hose', () => {
    const supports: Run['supports'] = [
      { id: 'c1', kind: 'clamp', point: [0, 0, 0], axis: [1, 0, 0] },
      { id: 'w1', kind: 'waypoint', point: [0, 0, 0] },
    ];
    const asked = (onePlane: string[]): string[] =>
      problems(project([], { runs: [{ ...RUNS[0]!, supports, onePlane }, RUNS[1]!, RUNS[2]!] }));
    expect(asked(['a', 'c1'])).toEqual([]);
    expect(asked(['w1'])[0]).toMatch(/^runs\[0\]\.onePlane\[0\]: no clamp or pass-through of this run/);
    expect(asked(['b'])).toHaveLength(1);
  });
});
