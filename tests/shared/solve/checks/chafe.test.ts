import { describe, expect, it } from 'vitest';
import type { Clearance, Finding, Lay } from '../../../../shared/document/lay/schema.ts';
import type { Project, Skin } from '../../../../shared/document/project/schema.ts';
import { clearanceTo, rockWith, straightLay } from '../../../arbitraries/lays.ts';
import { sampleHose, sampleProject, sampleRun } from '../../../arbitraries/projects.ts';
import { findingsOf, resolved } from './context.ts';

const FRAME = { kind: 'skin', id: 'frame', part: 'frame' } as const;

const exactly = (mm: number): Clearance => clearanceTo(FRAME, mm, 0, { provenAtLeastMm: mm });

/** The sample bay with a frame of the given kind and metal. */
function found(skin: Partial<Skin>, lay: Partial<Lay>, changes: Partial<Project> = {}): Finding[] {
  const { bay } = sampleProject();
  const frame: Skin = { id: 'frame', name: 'Frame', kind: 'plain', parts: ['frame'], ...skin };
  const project = resolved({ bay: { ...bay, skins: [frame, ...bay.skins] }, ...changes }, { hoses: [sampleHose()] });
  return findingsOf('chafe', project, straightLay(lay));
}

const told = (findings: readonly Finding[]): string[] => findings.map(({ severity, rule }) => `${severity} ${rule}`);

describe('chafe on what is softer than steel', () => {
  it.each(['aluminium', 'composite', 'plastic', 'rubber'] as const)(
    'looks within reach of %s, stops at a touch',
    (material) => {
      expect(told(found({ material }, { clearances: [exactly(25)] }))).toEqual([]);
      expect(told(found({ material }, { clearances: [exactly(24.9)] }))).toEqual(['look chafe-reach']);
      expect(told(found({ material }, { clearances: [exactly(0)] }))).toEqual(['stop chafe-reach']);
    },
  );

  it('says nothing of steel, nor where no material is known; wiring is sawed whatever it is', () => {
    expect(found({ material: 'steel' }, { clearances: [exactly(1)] })).toEqual([]);
    expect(found({}, { clearances: [exactly(1)] })).toEqual([]);
    expect(told(found({ kind: 'wiring' }, { clearances: [exactly(1)] }))).toEqual(['look chafe-reach']);
  });
});

describe('chafe at the extremes', () => {
  const aluminium = { material: 'aluminium' } as const;
  const rubs = (mm: number): Partial<Lay> => ({ rock: rockWith({ rubs: [exactly(mm)] }) });

  it('looks within what shakes on top, stops at a touch, and names pose and place', () => {
    expect(told(found(aluminium, rubs(3)))).toEqual([]);
    expect(told(found(aluminium, rubs(2.9)))).toEqual(['look chafe-rock']);
    const [touch] = found(aluminium, rubs(0));
    expect(touch).toMatchObject({ severity: 'stop', rule: 'chafe-rock', with: FRAME, at: { arcLengthMm: 120 } });
    expect(touch?.message).toMatch(/With engine at roll \+3 degrees bare steel braid touches frame \(Frame\)/);
  });

  it('does not say again what is said at rest, unless it is graver', () => {
    const both = (mm: number): Finding[] => found(aluminium, { ...rubs(mm), clearances: [exactly(10)] });
    expect(told(both(2))).toEqual(['look chafe-reach']);
    expect(told(both(-1))).toEqual(['look chafe-reach', 'stop chafe-rock']);
  });

  it('is ended by a sleeve', () => {
    expect(found(aluminium, rubs(0), { runs: [sampleRun({ sleeve: 'sleeve-16' })] })).toEqual([]);
  });

  it('names polyester with its heat limit', () => {
    expect(found(aluminium, rubs(0))[0]?.mend).toMatch(/polyester braid, which bears 150/);
  });
});
