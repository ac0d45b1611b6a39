import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../../shared/document/lay/schema.ts';
import { compareFindings } from '../../../../shared/solve/mends/compareFindings.ts';

function finding(changes: Partial<Finding>): Finding {
  return {
    check: 'clearance',
    run: 'line',
    severity: 'look',
    rule: 'clearance-plain',
    limit: 100,
    measured: 90,
    margin: -10,
    unit: 'mm',
    source: 's',
    message: 'm',
    ...changes,
  };
}

const TO_SKIN = { kind: 'skin', id: 'pipe' } as const;

describe('findings before and after a change', () => {
  it('are cured when they are gone or less grave, and say what is left', () => {
    const [stop, look, note] = (['stop', 'look', 'note'] as const).map((severity) => finding({ severity }));
    expect(compareFindings([stop!], [])).toMatchObject({ cured: [{ finding: stop }], worse: [] });
    expect(compareFindings([stop!], [look!]).cured).toEqual([{ finding: stop, left: look }]);
    expect(compareFindings([look!], [note!]).cured).toEqual([{ finding: look, left: note }]);
    expect(compareFindings([note!], []).cured).toEqual([]);
  });

  it('are worse when they are new, graver, or further beyond the limit by more than a fiftieth of it', () => {
    const now = finding({});
    expect(compareFindings([], [now]).worse).toEqual([now]);
    expect(compareFindings([now], [finding({ severity: 'stop' })]).worse).toHaveLength(1);
    expect(compareFindings([now], [finding({ margin: -12 })]).worse).toEqual([]);
    expect(compareFindings([now], [finding({ margin: -12.1 })]).worse).toHaveLength(1);
    // A new note is told and is no harm.
    expect(compareFindings([], [finding({ severity: 'note' })])).toMatchObject({
      worse: [],
      newNotes: [{ severity: 'note' }],
    });
  });

  it('are not worse by what no paper tells: a tenth of a mm or of a degree', () => {
    const level = (margin: number): Finding => finding({ unit: 'deg', limit: 0.1, margin, severity: 'stop' });
    expect(compareFindings([level(-0.1)], [level(-0.19)]).worse).toEqual([]);
    expect(compareFindings([level(-0.1)], [level(-0.21)]).worse).toHaveLength(1);
    const room = (margin: number): Finding => finding({ limit: 0, margin });
    expect(compareFindings([room(-1)], [room(-1.09)]).worse).toEqual([]);
    expect(compareFindings([room(-1)], [room(-1.11)]).worse).toHaveLength(1);
  });

  it('belong to one run, one rule and one thing: another thing too near is a new finding', () => {
    const pipe = finding({ with: TO_SKIN });
    const other = finding({ with: { kind: 'skin', id: 'panel' } });
    expect(compareFindings([pipe], [other])).toMatchObject({ cured: [{ finding: pipe }], worse: [other] });
    const elsewhere = finding({ with: TO_SKIN, run: 'other' });
    expect(compareFindings([pipe], [elsewhere]).worse).toEqual([elsewhere]);
  });

  it('stand for all of their kind by the gravest, then by the one furthest off', () => {
    const [near, far] = [finding({ margin: -5 }), finding({ margin: -30 })];
    // One of two places is cured: the finding stays, less far off.
    expect(compareFindings([near, far], [near])).toMatchObject({ cured: [], worse: [] });
    expect(compareFindings([near], [near, far]).worse).toEqual([far]);
  });
});
