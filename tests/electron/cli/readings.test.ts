import { expect, test } from 'vitest';
import { programFolders } from '../../../electron/node/programFolders.ts';
import { runHere } from './runHere.ts';

function hosewright(...args: string[]) {
  return runHere(programFolders('.'), args);
}

test('a clock that says nothing of its way is told as two hoses, one that does as one', async () => {
  const both = await hosewright('clock', 'V225');
  expect(both.code).toBe(0);
  expect(both.out).toContain('CLOCK 225°');
  expect(both.out).toContain('CLOCK 135°');
  expect(both.out).toContain('one of two hoses');
  const one = await hosewright('clock', '225', 'far', 'to', 'near', 'clockwise', '--json');
  expect(JSON.parse(one.out)).toMatchObject({ ambiguous: false, shapes: [{ clockDeg: 225, code: '45' }] });
  const bad = await hosewright('clock', 'straight');
  expect(bad).toMatchObject({ code: 2, out: '' });
  expect(bad.err).toContain('expected an angle');
});

test('a coded length is told both ways with its words, and a plain one as it reads', async () => {
  const coded = await hosewright('length', '0244');
  expect(coded.out).toContain('622.3 mm (24 1/2 in)  0244 in inches and eighths = 24-4/8 in');
  expect(coded.out).toContain('62.0 mm (2 7/16 in)  0244 in hundredths of an inch = 2.44 in');
  const plain = await hosewright('length', '24-3/8"', '--json');
  expect(JSON.parse(plain.out)).toEqual({
    text: '24-3/8"',
    ambiguous: false,
    readings: [{ mm: 619.125, readAs: 'as written' }],
  });
  expect((await hosewright('length', 'long')).code).toBe(2);
});

test('a torque is told by every table with its name and flats, the softer metal where two meet', async () => {
  const steel = await hosewright('torque', '8', 'steel');
  expect(steel.out).toContain('38.4 to 47.5 N·m (340 to 420 in-lb)  Army, flared hose coupling nut, lubricated');
  expect(steel.out).toContain('48.6 to 53.1 N·m (430 to 470 in-lb)  Navy, swivel nut on hose, steel');
  expect(steel.out).toContain('1.25 to 1.75 flats');
  const mixed = await hosewright('torque', '6', 'steel', '--on', 'aluminium', '--json');
  const told = JSON.parse(mixed.out) as { torques: { table: { id: string } }[]; note: string };
  expect(told.torques.map(({ table }) => table.id)).toEqual(['army-hose-nut', 'navy-aluminium']);
  expect(told.note).toContain('no rule was found');
  const bad = await hosewright('torque', 'x', 'tin', '--on', 'lead');
  expect(bad.code).toBe(2);
  for (const word of ['DASH', 'MATERIAL', '--on']) expect(bad.err).toContain(word);
});
