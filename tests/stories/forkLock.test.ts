import { describe, expect, test } from 'vitest';
import type { Run, Skin } from '../../shared/document/project/schema.ts';
import { motionAbout } from '../arbitraries/motions.ts';
import { exampleEnd, exampleHose } from '../arbitraries/rig.ts';
import { aboveNote, type Block, findingsOf, layStory, type Story } from './storyBay.ts';

const line: Run = {
  id: 'cooler',
  name: 'Oil cooler line',
  a: { port: 'engine', end: 'straight' },
  b: { port: 'cooler', end: 'straight' },
  service: { purpose: 'oil-cooler', fluid: 'engine-oil', pressureKpa: 400, temperatureC: 110 },
  hose: 'hose-6',
  slack: 0.12,
  supports: [],
};

function story(changes: Partial<Run> = {}, beam?: Block, material: Skin['material'] = 'aluminium', droopMm = 0): Story {
  return {
    blocks: [
      { name: 'engine', min: [-200, -100, -100], max: [-30, 100, 100] },
      { name: 'cooler', min: [430, -60, -40], max: [560, 60, 40] },
      ...(beam === undefined ? [] : [beam]),
    ],
    hoses: [exampleHose({ id: 'hose-6', minBendRadiusMm: 60, outsideDiameterMm: 11.5 })],
    ends: [exampleEnd(0, { id: 'straight', seatToBendMm: 0, bendToShoulderMm: 20, shoulderToMouthMm: 15 })],
    bay: {
      scanUncertaintyMm: 1,
      skins: [{ id: 'frame', name: 'Frame', kind: 'plain', parts: ['frame'], ...(material && { material }) }],
      bodies: [
        {
          id: 'fork',
          name: 'Fork',
          parts: ['cooler'],
          motion: motionAbout([480, 0, 0], { yawDeg: [-35, 35], shiftMm: { z: [-droopMm, 0] } }),
        },
      ],
    },
    project: {
      ports: [
        {
          id: 'engine',
          name: 'Engine',
          seatPoint: [0, 0, 0],
          axis: [1, 0, 0],
          up: [0, 0, 1],
          seat: 'flare-37',
          dash: 8,
        },
        {
          id: 'cooler',
          name: 'Cooler',
          seatPoint: [400, 0, 0],
          axis: [-1, 0, 0],
          up: [0, 0, 1],
          seat: 'flare-37',
          dash: 8,
          body: 'fork',
        },
      ],
      runs: [{ ...line, ...changes }],
    },
  };
}

/** A member of the frame beside the line: far from it straight ahead, where it comes to be with the fork at its right lock. */
const MEMBER: Block = { name: 'frame', min: [270, -130, -60], max: [350, -90.5, 60] };

describe('an oil cooler line from engine to fork, the fork turning 35 degrees either way', () => {
  test('with hose enough and nothing beside it no extreme has anything against it', async () => {
    const report = await layStory(story());
    expect(report.lays[0]?.outcome).toBe('laid');
    // 12 % of slack is what the lock takes; straight ahead it is more than the handbook has, and the check says so.
    expect(aboveNote(report).filter((text) => !text.startsWith('look slack'))).toEqual([]);
  });

  test('cut for the fork straight ahead it goes tight at full lock', async () => {
    const [tight] = findingsOf(await layStory(story({ slack: 0.05 })), 'rock');
    expect(tight).toMatchObject({ severity: 'stop', rule: 'rock-slack' });
    expect(tight?.message).toMatch(/fork at yaw [+-]35 degrees/);
  });

  test('bare braid touches the aluminium frame at one full lock only: stop, with pose and place', async () => {
    const report = await layStory(story({}, MEMBER));
    const atRest = report.lays[0]?.clearances.find(({ to }) => to.id === 'frame');
    expect(atRest?.provenAtLeastMm).toBeGreaterThan(25);
    const chafes = findingsOf(report, 'chafe');
    expect(chafes).toHaveLength(1);
    expect(chafes[0]).toMatchObject({ severity: 'stop', rule: 'chafe-rock', with: { kind: 'skin', id: 'frame' } });
    expect(chafes[0]?.message).toContain('fork at yaw +35 degrees');
    // The place is on the hose as it lies there, beside the member.
    const [x, y] = chafes[0]?.at?.point ?? [0, 0];
    expect(x).toBeGreaterThan(260);
    expect(x).toBeLessThan(360);
    expect(y).toBeLessThan(-75);
    const touched = report.lays[0]?.rock?.extremes
      .filter(({ rubs }) => rubs !== undefined)
      .map(({ pose }) => pose.name);
    expect(touched).toEqual(['fork at yaw +35 degrees']);
  });

  test('the same member in steel, further away, or the hose with polyester braid: nothing is sawed', async () => {
    expect(findingsOf(await layStory(story({}, MEMBER, 'steel')), 'chafe')).toEqual([]);
    const further: Block = { ...MEMBER, max: [350, -96, 60] };
    expect(findingsOf(await layStory(story({}, further)), 'chafe')).toEqual([]);
    const cloth = story({}, MEMBER);
    const hoses = cloth.hoses.map((hose) => ({ ...hose, cover: 'polyester-braid' as const }));
    expect(findingsOf(await layStory({ ...cloth, hoses }), 'chafe')).toEqual([]);
  });

  test('with 150 mm of travel the hose that lock alone asks for does not reach at full droop; some 40 mm longer it does', async () => {
    // 40 mm more hose between the same two ports bends to 58 mm with the fork up: it takes a hose that may.
    const drooped = (slack: number) => {
      const travels = story({ slack }, undefined, 'aluminium', 150);
      return layStory({ ...travels, hoses: travels.hoses.map((hose) => ({ ...hose, minBendRadiusMm: 50 })) });
    };
    const short = await drooped(0.12);
    const [tight] = findingsOf(short, 'rock');
    expect(tight).toMatchObject({ severity: 'stop', rule: 'rock-slack' });
    expect(tight?.message).toContain('z -150 mm');
    const long = await drooped(0.25);
    const moreMm = (long.lays[0]?.cutLengthMm ?? 0) - (short.lays[0]?.cutLengthMm ?? 0);
    expect(moreMm).toBeGreaterThan(-(tight?.measured ?? 0));
    expect(moreMm).toBeLessThan(45);
    // It is still wrung where the fork is low: a look, since the ends stand so; nothing forbids cutting.
    expect(long.findings.filter(({ severity }) => severity === 'stop')).toEqual([]);
  });

  test('a hose that just reaches at full droop is bent below its least radius there: stop, with the pose', async () => {
    const travels = story({ slack: 0.2 }, undefined, 'aluminium', 150);
    const hoses = travels.hoses.map((hose) => ({ ...hose, minBendRadiusMm: 50 }));
    const kinked = findingsOf(await layStory({ ...travels, hoses }), 'rock').find(({ rule }) => rule === 'rock-radius');
    expect(kinked).toMatchObject({ severity: 'stop' });
    expect(kinked?.message).toContain('z -150 mm');
  });

  test('an exhaust 60 mm under where the hose hangs asks for a clamp, one 90 mm under it does not; under a wide one it is too near', async () => {
    const under = async (topMm: number, halfWidthMm = 20) => {
      const pipe: Block = { name: 'exhaust', min: [150, -halfWidthMm, topMm - 30], max: [250, halfWidthMm, topMm] };
      const told = story({}, pipe);
      const hot: Skin = { id: 'exhaust', name: 'Exhaust', kind: 'hot', parts: ['exhaust'], surfaceTemperatureC: 300 };
      const report = await layStory({ ...told, bay: { ...told.bay, skins: [hot] } });
      const clearance = report.lays[0]?.clearances.find(({ to }) => to.id === 'exhaust');
      const clamps = report.lays[0]?.supports.length;
      return { mm: clearance?.clearanceMm, clamps, told: findingsOf(report, 'heatDistance') };
    };
    // 3 in: Street Rodder plumbing tips; New Jersey Administrative Code 13:62-4.16
    const near = await under(-136);
    expect(near.clamps).toBe(1);
    expect(near.mm).toBeGreaterThanOrEqual(76.2);
    expect(near.told.map(({ severity }) => severity)).toEqual(['look']);
    // Straight from port to port it is 14 mm over this one: between ports 400 mm apart no hose gets up that far and down again.
    const over = await under(-20, 400);
    expect(over.mm).toBeLessThan(76.2);
    expect(over.told[0]).toMatchObject({ severity: 'stop', with: { kind: 'skin', id: 'exhaust' } });
    const far = await under(-166);
    expect(far.clamps).toBe(0);
    expect(far.mm).toBeGreaterThan(85);
    expect(far.told.filter(({ severity }) => severity === 'stop')).toEqual([]);
  });
});
