import { describe, expect, it } from 'vitest';
import type { Clearance, Finding } from '../../../../shared/document/lay/schema.ts';
import type { Project } from '../../../../shared/document/project/schema.ts';
import { clearanceTo, straightLay } from '../../../arbitraries/lays.ts';
import { sampleHose, samplePort, sampleProject, sampleRun } from '../../../arbitraries/projects.ts';
import { findingsOf, resolved } from './context.ts';

/** A clearance proven exactly, so that limits can be met to the digit. */
function exactly(to: Clearance['to'], mm: number): Clearance {
  return clearanceTo(to, mm, 0, { provenAtLeastMm: mm });
}

function found(check: string, clearance: Clearance, changes: Partial<Project> = {}, hose = {}): Finding[] {
  return findingsOf(check, resolved(changes, { hoses: [sampleHose(hose)] }), straightLay({ clearances: [clearance] }));
}

const bayWith = (changes: Partial<Project['bay']>): Partial<Project> => ({
  bay: { ...sampleProject().bay, ...changes },
});
const PLAIN = { kind: 'skin', id: 'plain', part: 'frame' } as const;
const HOT = { kind: 'skin', id: 'exhaust', part: 'exhaust-left' } as const;
const TUB = { kind: 'skin', id: 'tub' } as const;
const OTHER = { kind: 'run', id: 'r2' } as const;

describe('clearance', () => {
  it.each([
    // JTM001-1 13.3.4: 0.47 in, 12 mm; the others are common practice.
    [PLAIN, 12],
    [TUB, 25],
    [{ kind: 'skin', id: 'bracket' } as const, 25],
    [{ kind: 'skin', id: 'belt' } as const, 25],
  ])('to %j turns at %i mm', (to, limit) => {
    expect(found('clearance', exactly(to, limit))).toEqual([]);
    const [finding] = found('clearance', exactly(to, limit - 0.2));
    expect(finding).toMatchObject({ severity: 'stop', limit, with: to, at: { arcLengthMm: 120 } });
    expect(finding?.margin).toBeCloseTo(-0.2, 9);
    expect(finding?.message).toMatch(/mm \(.* in\)/);
  });

  it('adds the scan uncertainty and says so', () => {
    const bay = bayWith({ scanUncertaintyMm: 3 });
    expect(found('clearance', exactly(PLAIN, 15), bay)).toEqual([]);
    const [finding] = found('clearance', exactly(PLAIN, 14.9), bay);
    expect(finding).toMatchObject({ limit: 15 });
    expect(finding?.message).toContain('3.0 mm (0.12 in) of it for the scan');
  });

  it('notes a clearance that measures enough but is proven to a little less', () => {
    const [finding] = found('clearance', clearanceTo(PLAIN, 12, 12));
    expect(finding).toMatchObject({ severity: 'note', measured: 11.95 });
    expect(finding?.message).toContain('proven');
  });

  it('says by how much a hose reaches into a part', () => {
    const [finding] = found('clearance', exactly(PLAIN, -4));
    expect(finding?.message).toContain('Reaches 4.0 mm (0.16 in) into frame (Plain)');
  });

  it('looks at hoses under 12 mm apart and stops hoses that pass through each other', () => {
    const two = {
      ports: [...sampleProject().ports, samplePort({ id: 'p3' }), samplePort({ id: 'p4' })],
      runs: [
        sampleRun(),
        sampleRun({ id: 'r2', name: 'Feed', a: { port: 'p3', end: 'end-8-0' }, b: { port: 'p4', end: 'end-8-0' } }),
      ],
    };
    expect(found('clearance', exactly(OTHER, 12), two)).toEqual([]);
    const [near] = found('clearance', exactly(OTHER, 5), two);
    expect(near).toMatchObject({ severity: 'look', rule: 'hose-spacing', with: OTHER });
    expect(near?.message).toContain('the hose "Feed"');
    expect(found('clearance', exactly(OTHER, -1), two)).toMatchObject([{ severity: 'stop' }]);
  });

  it("goes by the skin's own clearance, and notes where that is less than the rule", () => {
    const skins = [{ id: 'tub', name: 'Tub', kind: 'composite' as const, parts: ['tub'], clearanceMm: 8 }];
    const [note] = found('clearance', exactly(TUB, 10), bayWith({ skins }));
    expect(note).toMatchObject({ severity: 'note', limit: 8, overrideReason: expect.stringContaining('Tub') });
    expect(found('clearance', exactly(TUB, 7), bayWith({ skins }))).toMatchObject([{ severity: 'stop', limit: 8 }]);
    expect(found('clearance', exactly(TUB, 26), bayWith({ skins }))).toEqual([]);
  });

  it('notes what passes only by an override, with its reason', () => {
    const overrides = [{ rule: 'clearance-plain', value: 5, reason: 'clamped both sides' }];
    expect(found('clearance', exactly(PLAIN, 6), { overrides })).toMatchObject([
      { severity: 'note', limit: 5, margin: 1, overrideReason: 'clamped both sides' },
    ]);
    expect(found('clearance', exactly(PLAIN, 12.5), { overrides })).toEqual([]);
  });

  it('leaves hot skins to the heat check', () => {
    expect(found('clearance', exactly(HOT, 1))).toEqual([]);
  });

  it('holds a skin that the project no longer has to what the lay was made for', () => {
    const gone = clearanceTo({ kind: 'skin', id: 'gone' }, 8, 9);
    expect(found('clearance', gone)).toMatchObject([{ limit: 9, severity: 'stop' }]);
  });
});

describe('heatDistance', () => {
  // 3 in: Street Rodder; N.J.A.C. 13:62-4.16. 6 in: Stinson owners.
  it('stops under 3 in, looks from 3 to 6 in, passes from 6 in', () => {
    const severity = (mm: number): string[] => found('heatDistance', exactly(HOT, mm)).map((f) => f.severity);
    expect(severity(3 * 25.4 - 0.1)).toEqual(['stop']);
    expect(severity(3 * 25.4)).toEqual(['look']);
    expect(severity(6 * 25.4 - 0.1)).toEqual(['look']);
    expect(severity(6 * 25.4)).toEqual([]);
  });

  it('names the temperature, the source and who disagrees', () => {
    const [finding] = found('heatDistance', exactly(HOT, 40));
    expect(finding?.message).toContain('exhaust-left (Exhaust) at 600 deg C');
    expect(finding?.source).toContain('3 in');
    expect(finding?.dissent).toMatch(/6 in.*4 in.*3 in.*2 in.*1\.25 in/);
    expect(finding?.mend).toContain('does not raise');
  });

  it('lets a sleeve end the look, never the stop', () => {
    const runs = [sampleRun({ sleeve: 'sleeve-16' })];
    expect(found('heatDistance', exactly(HOT, 100), { runs })).toEqual([]);
    expect(found('heatDistance', exactly(HOT, 70), { runs })).toMatchObject([{ severity: 'stop' }]);
  });

  it('adds the scan uncertainty to both distances', () => {
    const bay = bayWith({ scanUncertaintyMm: 2 });
    expect(found('heatDistance', exactly(HOT, 78), bay)).toMatchObject([{ severity: 'stop' }]);
    expect(found('heatDistance', exactly(HOT, 154), bay)).toMatchObject([{ severity: 'look' }]);
    expect(found('heatDistance', exactly(HOT, 154.5), bay)).toEqual([]);
  });

  it('carries an override as a note beside the look', () => {
    const overrides = [{ rule: 'clearance-hot', value: 50, reason: 'water-cooled manifold' }];
    expect(found('heatDistance', exactly(HOT, 60), { overrides })).toMatchObject([
      { severity: 'note', overrideReason: 'water-cooled manifold' },
      { severity: 'look', rule: 'heat-sleeve-within' },
    ]);
  });
});

describe('chafe', () => {
  it('looks at bare steel braid within reach of composite, and stops where it touches', () => {
    expect(found('chafe', exactly(TUB, 25))).toEqual([]);
    const [near] = found('chafe', exactly(TUB, 24.9));
    expect(near).toMatchObject({ severity: 'look', rule: 'chafe-reach', with: TUB });
    expect(near?.mend).toMatch(/sleeve.*stand-off.*polyester/);
    expect(found('chafe', exactly(TUB, 0))).toMatchObject([{ severity: 'stop' }]);
    expect(found('chafe', exactly(TUB, 26.9), bayWith({ scanUncertaintyMm: 2 }))).toMatchObject([{ severity: 'look' }]);
    expect(found('chafe', exactly(TUB, 27), bayWith({ scanUncertaintyMm: 2 }))).toEqual([]);
    expect(found('chafe', exactly(TUB, 2), bayWith({ scanUncertaintyMm: 2 }))).toMatchObject([{ severity: 'stop' }]);
  });

  it('looks at steel braid beside another hose', () => {
    expect(found('chafe', exactly(OTHER, 12))).toEqual([]);
    expect(found('chafe', exactly(OTHER, 11.9))).toMatchObject([{ severity: 'look', rule: 'hose-spacing' }]);
  });

  it('lets a sleeve, another cover or another skin be', () => {
    expect(found('chafe', exactly(TUB, 1), { runs: [sampleRun({ sleeve: 'sleeve-16' })] })).toEqual([]);
    expect(found('chafe', exactly(TUB, 1), {}, { cover: 'polyester-braid' })).toEqual([]);
    expect(found('chafe', exactly(PLAIN, 1))).toEqual([]);
  });
});
