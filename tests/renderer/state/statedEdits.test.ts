import { expect, it } from 'vitest';
import { setPortMaterial, setRigidLine } from '../../../renderer/state/edits/portEdits.ts';
import { setEnd, setHoseClamps, setMadeOn, setOwnClock } from '../../../renderer/state/edits/runEdits.ts';
import { setVehicle } from '../../../renderer/state/edits/vehicleEdits.ts';
import { parseProject } from '../../../shared/document/project/parseProject.ts';
import { serialiseProject } from '../../../shared/document/project/serialiseProject.ts';
import { sampleProject } from '../../arbitraries/projects.ts';

it('states what may be left unsaid, survives the file, and takes it back to the very same file', () => {
  const project = sampleProject();
  const run = project.runs[0]!.id;
  const port = project.ports[0]!.id;
  const stated = setVehicle(setMadeOn(setPortMaterial(project, port, 'brass'), run, '2026-05'), 'boat');
  const read = parseProject(serialiseProject(stated));
  expect(read.ok && [read.value.vehicle, read.value.runs[0]?.madeOn, read.value.ports[0]?.material]).toEqual([
    'boat',
    '2026-05',
    'brass',
  ]);
  const back = setVehicle(setMadeOn(setPortMaterial(stated, port, undefined), run, ''), undefined);
  expect(serialiseProject(back)).toBe(serialiseProject(project));
});

it('states how hose clamps sit and where a rigid line is held, and lets a clock come and go beside them', () => {
  const project = sampleProject();
  const run = project.runs[0]!.id;
  const port = project.ports[0]!.id;
  const clamps = { count: 2, fromHoseEndMm: 8, bandMm: 13.5 };
  const stated = setRigidLine(setHoseClamps(project, run, 'a', clamps), port, { clampMm: 90 });
  const read = parseProject(serialiseProject(stated));
  expect(read.ok && [read.value.runs[0]?.a.hoseClamps, read.value.ports[0]?.rigidLine]).toEqual([
    clamps,
    { clampMm: 90 },
  ]);
  const turned = setOwnClock(stated, run, 'a', 30);
  expect(turned.runs[0]?.a).toMatchObject({ clockDeg: 30, hoseClamps: clamps });
  expect(setOwnClock(turned, run, 'a', undefined)).toEqual(stated);
  expect(setEnd(stated, run, 'a', 'other').runs[0]?.a).not.toHaveProperty('hoseClamps');
  const back = setRigidLine(setHoseClamps(stated, run, 'a', undefined), port, undefined);
  expect(serialiseProject(back)).toBe(serialiseProject(project));
});

it('changes nothing for what is stated already, nor for a date that is none', () => {
  const project = setVehicle(sampleProject(), 'car');
  const run = project.runs[0]!.id;
  expect(setVehicle(project, 'car')).toBe(project);
  expect(setPortMaterial(project, project.ports[0]!.id, undefined)).toBe(project);
  for (const wrong of ['May 2026', '2026-13', '2026-05-32', '2026'])
    expect(setMadeOn(project, run, wrong)).toBe(project);
});
