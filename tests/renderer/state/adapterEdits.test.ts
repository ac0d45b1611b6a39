import { describe, expect, it } from 'vitest';
import {
  adaptersFor,
  addAdapter,
  addOtherOutlet,
  chooseAdapter,
  moveAdapter,
  removeAdapter,
  seatBelow,
  swapOutlet,
  turnAdapter,
} from '../../../renderer/state/edits/adapterEdits.ts';
import { portSeat } from '../../../renderer/state/portSeat.ts';
import { distance } from '../../../shared/base/vec3.ts';
import { parseProject } from '../../../shared/document/project/parseProject.ts';
import type { Project } from '../../../shared/document/project/schema.ts';
import { serialiseProject } from '../../../shared/document/project/serialiseProject.ts';
import { exampleAdapter } from '../../arbitraries/adapters.ts';
import { SAMPLE_PROJECT } from '../sampleBench.ts';

const UNION = exampleAdapter({ id: 'union', portSeat: 'flare-37', seat: 'cone-24' });
const ELBOW = exampleAdapter({ id: 'elbow', form: 'elbow', bendAngleDeg: 90, portSeat: 'cone-24' });
const TAPER = { ...ELBOW, id: 'taper', turning: 'taper' } as const;
const TEE = exampleAdapter({ id: 'tee', form: 'tee', branchToSeatMm: 30, branchSeat: 'cone-24', branchDash: 6 });
const TABLE = [TAPER, ELBOW, UNION, TEE];

const usesOf = (project: Project, id = 'p1') => project.ports.find((p) => p.id === id)?.adapters;
const readsBack = (project: Project) => parseProject(serialiseProject(project)).ok;

describe('adapters on a port', () => {
  it('are put on, changed, moved and taken off, and read back as written', () => {
    const one = addAdapter(SAMPLE_PROJECT, 'p1', UNION);
    const two = addAdapter(one, 'p1', ELBOW);
    expect(usesOf(two)).toEqual([
      { adapter: 'union', outlet: 'straight' },
      { adapter: 'elbow', outlet: 'straight', clockDeg: 0 },
    ]);
    expect(readsBack(two)).toBe(true);
    const turned = turnAdapter(two, 'p1', 1, { clockDeg: 70 });
    expect(usesOf(turned)?.[1]?.clockDeg).toBe(70);
    expect(usesOf(moveAdapter(turned, 'p1', 0, 1))?.map((u) => u.adapter)).toEqual(['elbow', 'union']);
    expect(moveAdapter(turned, 'p1', 1, 1)).toBe(turned);
    const none = removeAdapter(removeAdapter(two, 'p1', 0), 'p1', 0);
    expect(none).toEqual(SAMPLE_PROJECT);
    expect(removeAdapter(none, 'p1', 0)).toBe(none);
  });

  it('of a taper thread have a range, which may become one clock when it is tight', () => {
    const ranged = addAdapter(SAMPLE_PROJECT, 'p1', TAPER);
    expect(usesOf(ranged)?.[0]?.clockRangeDeg).toEqual([-45, 45]);
    const tight = turnAdapter(ranged, 'p1', 0, { clockDeg: 12 });
    expect(usesOf(tight)?.[0]).toEqual({ adapter: 'taper', outlet: 'straight', clockDeg: 12 });
    expect(readsBack(ranged) && readsBack(tight)).toBe(true);
    expect(usesOf(chooseAdapter(tight, 'p1', 0, ELBOW))?.[0]?.clockDeg).toBe(12);
    expect(usesOf(chooseAdapter(ranged, 'p1', 0, UNION))?.[0]).toEqual({ adapter: 'union', outlet: 'straight' });
  });

  it('are offered by what they go on', () => {
    const port = addAdapter(SAMPLE_PROJECT, 'p1', UNION).ports[0]!;
    expect(seatBelow(port, 0, TABLE)).toMatchObject({ seat: 'flare-37' });
    expect(seatBelow(port, 1, TABLE)).toEqual({ seat: 'cone-24', dash: 8 });
    expect(adaptersFor(TABLE, seatBelow(port, 1, TABLE)).map((a) => [a.adapter.id, a.fits])).toEqual([
      ['taper', true],
      ['elbow', true],
      ['union', false],
      ['tee', false],
    ]);
  });

  it('give the seat that the end goes on; one that no table has is passed over', () => {
    const project = addAdapter(addAdapter(SAMPLE_PROJECT, 'p1', UNION), 'p1', ELBOW);
    const { port, stack } = portSeat(project.ports[0]!, TABLE);
    // 45 mm of union up, 20 more to the bend, 25 aside at 12 o'clock (+x)
    expect(distance(port.seatPoint, [25, 0, 65])).toBeLessThan(1e-9);
    expect(stack?.fitted).toHaveLength(2);
    expect(portSeat(project.ports[0]!, [UNION]).stack?.fitted).toHaveLength(1);
    expect(portSeat(SAMPLE_PROJECT.ports[0]!, TABLE)).not.toHaveProperty('stack');
  });
});

describe('a tee', () => {
  const teed = addAdapter(addAdapter(SAMPLE_PROJECT, 'p1', UNION), 'p1', TEE);
  const { project, port: other } = addOtherOutlet(teed, 'p1', 1);

  it('takes a second port on its other outlet, once', () => {
    expect(usesOf(project, other)?.map((u) => u.outlet)).toEqual(['straight', 'branch']);
    expect(readsBack(project)).toBe(true);
    expect(addOtherOutlet(project, 'p1', 1)).toEqual({ project, port: other });
  });

  it('keeps both ports together when it is turned, changed or gone on from the other way', () => {
    const turned = turnAdapter(project, other, 1, { clockDeg: 33 });
    expect(usesOf(turned)?.[1]?.clockDeg).toBe(33);
    const swapped = swapOutlet(turned, 'p1', 1);
    expect([usesOf(swapped)?.[1]?.outlet, usesOf(swapped, other)?.[1]?.outlet]).toEqual(['branch', 'straight']);
    expect(readsBack(turned) && readsBack(swapped)).toBe(true);
  });
});
