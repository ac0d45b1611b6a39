import { describe, expect, it } from 'vitest';
import {
  bundleOfRun,
  setBundleGap,
  setBundleName,
  tieRuns,
  untieRun,
} from '../../../renderer/state/edits/bundleEdits.ts';
import { bringBack, leaveOut } from '../../../renderer/state/edits/leftOutEdits.ts';
import { setPortInFirewall } from '../../../renderer/state/edits/portEdits.ts';
import { setProjectName, setProjectNote } from '../../../renderer/state/edits/projectEdits.ts';
import {
  type KnownFigure,
  setBled,
  setCutLength,
  setFigure,
  setFlow,
  setOnePlane,
} from '../../../renderer/state/edits/runEdits.ts';
import { changeSupport, removeSupport } from '../../../renderer/state/edits/supportEdits.ts';
import { Project, type Run } from '../../../shared/document/project/schema.ts';
import { SAMPLE_PROJECT } from '../sampleBench.ts';

const [FEED, DRAIN] = SAMPLE_PROJECT.runs as [Run, Run];
const VENT: Run = { ...DRAIN, id: 'vent', name: 'Vent' };
const RETURN: Run = { ...DRAIN, id: 'return', name: 'Return' };
const FOUR: Project = { ...SAMPLE_PROJECT, runs: [FEED, DRAIN, VENT, RETURN] };
const feed = (project: Project): Run => project.runs[0] as Run;

describe('what is known of a service', () => {
  it.each([
    'flowLPerMin',
    'viscosityMm2PerS',
    'turboPressureKpa',
    'shaftTiltDeg',
    'housingTurnDeg',
  ] as const satisfies readonly KnownFigure[])('%s is stated, and not known again', (figure) => {
    const stated = setFigure(SAMPLE_PROJECT, 'feed', figure, 12);
    expect(feed(stated).service[figure]).toBe(12);
    expect(Project.safeParse(stated).success).toBe(true);
    expect(setFigure(stated, 'feed', figure, undefined)).toEqual(SAMPLE_PROJECT);
  });

  it('which way it flows, its bleed and its cut length go back to not stated', () => {
    const stated = setCutLength(setBled(setFlow(SAMPLE_PROJECT, 'feed', 'b-to-a'), 'feed', true), 'feed', 620);
    expect(feed(stated)).toMatchObject({ flow: 'b-to-a', bledAtCrest: true, cutLengthMm: 620 });
    expect(Project.safeParse(stated).success).toBe(true);
    const back = setCutLength(setBled(setFlow(stated, 'feed', 'a-to-b'), 'feed', false), 'feed', undefined);
    expect(back).toEqual(SAMPLE_PROJECT);
  });

  it('stretches in one plane are named once each', () => {
    const flat = setOnePlane(setOnePlane(SAMPLE_PROJECT, 'feed', 'a', true), 'feed', 'a', true);
    expect(feed(flat).onePlane).toEqual(['a']);
    expect(setOnePlane(flat, 'feed', 'a', false)).toEqual(SAMPLE_PROJECT);
  });
});

it('a stretch in one plane goes with the clamp it began at, and when that only guides', () => {
  const clamp = { id: 'c', kind: 'clamp', point: [50, 0, 0], axis: [1, 0, 0] } as const;
  const clamped: Project = { ...SAMPLE_PROJECT, runs: [{ ...FEED, supports: [clamp] as never }, DRAIN] };
  const flat = setOnePlane(setOnePlane(clamped, 'feed', 'a', true), 'feed', 'c', true);
  expect(feed(removeSupport(flat, 'feed', 'c')).onePlane).toEqual(['a']);
  expect(feed(changeSupport(flat, 'feed', 'c', { kind: 'waypoint' })).onePlane).toEqual(['a']);
  expect(feed(changeSupport(flat, 'feed', 'c', { name: 'By the pump' })).onePlane).toEqual(['a', 'c']);
});

describe('hoses tied side by side', () => {
  const bundles = (project: Project) => (project.bundles ?? []).map(({ runs }) => runs);

  it('are a bundle of two, joined by a third from either side', () => {
    const two = tieRuns(FOUR, 'feed', 'drain');
    expect(bundles(two)).toEqual([['feed', 'drain']]);
    expect(bundles(tieRuns(two, 'vent', 'drain'))).toEqual([['feed', 'drain', 'vent']]);
    expect(bundles(tieRuns(two, 'drain', 'vent'))).toEqual([['feed', 'drain', 'vent']]);
    expect(tieRuns(two, 'drain', 'feed')).toBe(two);
    expect(Project.safeParse(two).success).toBe(true);
  });

  it('are in one bundle at most: who is tied elsewhere leaves the one before', () => {
    const both = tieRuns(tieRuns(FOUR, 'feed', 'drain'), 'vent', 'return');
    expect(bundles(both)).toEqual([
      ['feed', 'drain'],
      ['vent', 'return'],
    ]);
    expect(bundles(tieRuns(both, 'feed', 'vent'))).toEqual([['vent', 'return', 'feed']]);
  });

  it('come apart when one of two is taken out', () => {
    const two = tieRuns(FOUR, 'feed', 'drain');
    expect(untieRun(two, 'feed')).toEqual(FOUR);
    expect(untieRun(two, 'vent')).toBe(two);
  });

  it('have a gap and a name of their own', () => {
    const two = tieRuns(FOUR, 'feed', 'drain');
    const apart = setBundleName(setBundleGap(two, 'bundle-1', 6), 'bundle-1', ' Pair ');
    expect(bundleOfRun(apart, 'drain')).toMatchObject({ gapMm: 6, name: 'Pair' });
    expect(bundleOfRun(setBundleGap(apart, 'bundle-1', undefined), 'drain')?.gapMm).toBeUndefined();
    expect(setBundleName(apart, 'bundle-1', ' ')).toBe(apart);
  });
});

describe('parts left out of the scan', () => {
  it('are named once and brought back; none is none stated', () => {
    const out = leaveOut(leaveOut(SAMPLE_PROJECT, 'old-pipe'), 'old-pipe');
    expect(out.bay.leftOut).toEqual(['old-pipe']);
    expect(bringBack(out, 'stand')).toBe(out);
    expect(bringBack(out, 'old-pipe')).toEqual(SAMPLE_PROJECT);
    expect(leaveOut(SAMPLE_PROJECT, ' ')).toBe(SAMPLE_PROJECT);
  });
});

describe('the firewall, and what the project is called', () => {
  it('is said of a port and of a pass-through, and of nothing else', () => {
    const port = setPortInFirewall(SAMPLE_PROJECT, 'p1', true);
    expect(port.ports[0]?.inFirewall).toBe(true);
    expect(setPortInFirewall(port, 'p1', false)).toEqual(SAMPLE_PROJECT);
    const hole = { id: 'h', kind: 'pass-through', point: [50, 0, 0], axis: [1, 0, 0] } as const;
    const led: Project = { ...SAMPLE_PROJECT, runs: [{ ...FEED, supports: [hole] as never }, DRAIN] };
    const fire = changeSupport(led, 'feed', 'h', { inFirewall: true });
    expect(feed(fire).supports[0]?.inFirewall).toBe(true);
    expect(feed(changeSupport(fire, 'feed', 'h', { kind: 'clamp' })).supports[0]?.inFirewall).toBeUndefined();
    expect(changeSupport(fire, 'feed', 'h', { inFirewall: false })).toEqual(led);
  });

  it('a name is kept, an empty one refused; a note may be none', () => {
    expect(setProjectName(SAMPLE_PROJECT, ' Kart ').name).toBe('Kart');
    expect(setProjectName(SAMPLE_PROJECT, '  ')).toBe(SAMPLE_PROJECT);
    const noted = setProjectNote(SAMPLE_PROJECT, 'scanned in May');
    expect(noted.note).toBe('scanned in May');
    expect(setProjectNote(noted, '')).toEqual(SAMPLE_PROJECT);
  });
});
