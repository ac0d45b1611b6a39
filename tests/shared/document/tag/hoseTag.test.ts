import { expect, it } from 'vitest';
import { hoseTag } from '../../../../shared/document/tag/hoseTag.ts';
import { sampleHose, sampleRun } from '../../../arbitraries/projects.ts';

const written = (label: string, ...[tagged]: Parameters<typeof hoseTag>) =>
  hoseTag(tagged).find((line) => line.label === label)?.value;

it('says which hose it is, its two ends and what it works at; what nobody wrote down stays open', () => {
  const tagged = { run: sampleRun(), hose: sampleHose() };
  expect(written('Hose', tagged)).toBe('r1 (Run 1), -8');
  expect([written('END A', tagged), written('END B', tagged)]).toEqual(['p1', 'p2']);
  expect(written('Works at', tagged)).toBe('500 kPa (73 psi)');
  for (const label of ['Proof', 'Tested on', 'Hose cured', 'Fitted on', 'By'])
    expect(written(label, tagged), label).toBeUndefined();
});

it('takes proof, day and age from what the bench wrote down, and no test that failed', () => {
  const proof = { on: '2026-05-12', pressureKpa: 5250 };
  const roll = { id: 'roll-7', cureDate: '2Q26' };
  const proved = { run: sampleRun({ asBuilt: { proof, fittedOn: '2026-06-01' } }), hose: sampleHose(), roll };
  expect(written('Proof', proved)).toBe('5250 kPa (761 psi)');
  expect(written('Tested on', proved)).toBe('2026-05-12');
  expect(written('Hose cured', proved)).toBe('2026-04');
  expect(written('Fitted on', proved)).toBe('2026-06-01');
  const failed = { run: sampleRun({ asBuilt: { proof: { ...proof, failed: true } } }), hose: sampleHose() };
  expect([written('Proof', failed), written('Tested on', failed)]).toEqual([undefined, undefined]);
});
