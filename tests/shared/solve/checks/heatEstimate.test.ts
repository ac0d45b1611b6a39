import { describe, expect, it } from 'vitest';
import type { Heat, HeatBand } from '../../../../shared/document/lay/heat.ts';
import type { Finding } from '../../../../shared/document/lay/schema.ts';
import type { Hose } from '../../../../shared/document/parts/schema.ts';
import type { Project } from '../../../../shared/document/project/schema.ts';
import { heatAlong } from '../../../arbitraries/heat.ts';
import { straightLay } from '../../../arbitraries/lays.ts';
import { sampleEnd, sampleHose, sampleRun, sampleSleeve } from '../../../arbitraries/projects.ts';
import { findingsOf, resolved } from './context.ts';

const COOL: HeatBand = { low: 60, likely: 70, high: 80 };
const STEEL_ENDS = { ends: [sampleEnd({ material: 'steel' })] };

function found(heat: Heat, hose: Partial<Hose> = {}, changes: Partial<Project> = {}, tables = {}): Finding[] {
  const project = resolved(changes, { hoses: [sampleHose(hose)], ...STEEL_ENDS, ...tables });
  return findingsOf('heatEstimate', project, straightLay({ heat }));
}

describe('the liner, against 230 deg C of the sample hose', () => {
  it.each([
    [{ low: 100, likely: 150, high: 229.9 }, []],
    [{ low: 100, likely: 150, high: 230.1 }, ['note']],
    [{ low: 100, likely: 229.9, high: 300 }, ['note']],
    [{ low: 100, likely: 230.1, high: 300 }, ['look']],
    [{ low: 229.9, likely: 260, high: 300 }, ['look']],
    [{ low: 230.1, likely: 260, high: 300 }, ['stop']],
  ])('%j', (middle, severities) => {
    expect(found(heatAlong(middle, COOL)).map((f) => f.severity)).toEqual(severities);
  });

  it('says where, by what it is heated, with its band, and that a sleeve raises nothing', () => {
    const [finding] = found(heatAlong({ low: 200, likely: 250, high: 310 }, COOL));
    expect(finding?.at?.arcLengthMm).toBe(250);
    expect(finding?.with).toEqual({ kind: 'skin', id: 'exhaust', part: 'exhaust-left' });
    expect(finding?.message).toContain('250 deg C (482 F) (200 to 310) at the liner');
    expect(finding?.message).toContain('exhaust-left');
    expect(finding?.source).toContain('NAVEDTRA 14315');
    expect(finding?.mend).toContain('never raises what the hose bears');
  });

  it('is silent where the fluid by itself is too hot: that is told once, as the rating', () => {
    const service = { purpose: 'oil-cooler', fluid: 'engine-oil', pressureKpa: 500, temperatureC: 231 } as const;
    const runs = [sampleRun({ service })];
    expect(found(heatAlong({ low: 231, likely: 240, high: 250 }, COOL), {}, { runs })).toEqual([]);
  });
});

it('tells hot soak where that is the graver, and running where that is', () => {
  const cool = heatAlong(COOL);
  const hot = heatAlong({ low: 200, likely: 250, high: 300 }, COOL);
  expect(found({ ...cool, soak: hot.soak })[0]?.message).toContain('in hot soak');
  expect(found({ ...cool, running: hot.running })[0]?.message).toContain('running');
});

it('is silent of a lay of which no heat is known', () => {
  expect(findingsOf('heatEstimate', resolved(), straightLay())).toEqual([]);
});

describe('covers', () => {
  const at = (likely: number): Heat => heatAlong({ low: 50, likely, high: likely }, COOL);

  it.each([
    ['polyester-braid', 150],
    ['aramid-braid', 200],
    ['textile-braid', 121],
  ] as const)('hold %s to %d deg C', (cover, limit) => {
    const hose = { cover, maxTemperatureC: 400 };
    expect(found(at(limit - 1), hose)).toEqual([]);
    const past = found(at(limit + 1), hose);
    expect(past.map((f) => [f.severity, f.limit, f.rule.startsWith('heat-cover-')])).toEqual([['look', limit, true]]);
  });

  it('hold rubber to the hose, and bare steel to nothing', () => {
    expect(found(at(231), { cover: 'rubber' }).map((f) => f.rule)).toEqual(['heat-liner', 'heat-cover-rubber']);
    expect(found(at(500), { cover: 'steel-braid', maxTemperatureC: 600 })).toEqual([]);
  });
});

describe('sleeves and ends', () => {
  const sleeved = { runs: [sampleRun({ sleeve: 'sleeve-16' })] };

  it('hold a sleeve to its own limit, and the hose in it to the hose', () => {
    const hot = heatAlong({ low: 50, likely: 261, high: 261 }, COOL);
    const cool = heatAlong({ low: 50, likely: 120, high: 120 }, COOL);
    const burnt: Heat = {
      ...cool,
      running: { ...cool.running, sleeve: hot.running.liner },
      soak: { ...cool.soak, sleeve: cool.soak.liner },
    };
    const tables = { sleeves: [sampleSleeve({ maxTemperatureC: 260 })] };
    expect(found(burnt, {}, sleeved, tables).map((f) => f.rule)).toEqual(['heat-sleeve']);
    const better = { sleeves: [sampleSleeve({ maxTemperatureC: 262 })] };
    expect(found(burnt, {}, sleeved, better)).toEqual([]);
    // In hot soak it is over for minutes only, and bears that.
    const soaked: Heat = {
      ...cool,
      running: { ...cool.running, sleeve: cool.running.liner },
      soak: { ...cool.soak, sleeve: hot.soak.liner },
    };
    expect(found(soaked, {}, sleeved, tables)).toEqual([]);
    // However much the sleeve bears, the hose in it bears no more.
    const inside = { ...burnt, running: { ...burnt.running, liner: hot.running.liner } };
    const mighty = { sleeves: [sampleSleeve({ maxTemperatureC: 1000 })] };
    expect(found(inside, {}, sleeved, mighty).map((f) => f.rule)).toEqual(['heat-liner']);
  });

  // SAE AS1946F 1.2.1: 275 F = 135 C with aluminium fittings.
  it('hold aluminium ends on PTFE to 135 deg C at the mouths only', () => {
    const alloy = { ends: [sampleEnd()] };
    const mouths = (likely: number): Heat =>
      heatAlong({ low: 50, likely: 200, high: 200 }, { low: 50, likely, high: likely });
    expect(found(mouths(134), {}, {}, alloy)).toEqual([]);
    const past = found(mouths(136), {}, {}, alloy);
    expect(past.map((f) => [f.rule, f.at?.arcLengthMm])).toEqual([
      ['aluminium-end-temperature', 20],
      ['aluminium-end-temperature', 480],
    ]);
    expect(found(mouths(136))).toEqual([]);
    expect(found(mouths(136), { core: 'nbr' }, {}, alloy)).toEqual([]);
  });

  it("hold an end to its maker's own figure where the table has it", () => {
    const own = { ends: [sampleEnd({ maxTemperatureC: 180 })] };
    const mouths = (likely: number): Heat => heatAlong(COOL, { low: 50, likely, high: likely });
    expect(found(mouths(179), {}, {}, own)).toEqual([]);
    expect(found(mouths(181), {}, {}, own).map((f) => f.rule)).toEqual(['heat-end', 'heat-end']);
  });
});

it('passes a limit that the project set with its reason, as a note', () => {
  const overrides = [{ rule: 'heat-liner', value: -30, reason: 'measured with a probe at the dyno' }];
  const [finding, ...more] = found(heatAlong({ low: 200, likely: 250, high: 255 }, COOL), {}, { overrides });
  expect(more).toEqual([]);
  expect(finding?.severity).toBe('note');
  expect(finding?.overrideReason).toContain('probe');
});

it('tells only the worst note of a run', () => {
  const hot = heatAlong({ low: 50, likely: 70, high: 300 }, COOL);
  const notes = found(hot, { cover: 'polyester-braid' });
  expect(notes.map((f) => [f.severity, f.rule])).toEqual([['note', 'heat-cover-polyester']]);
});
