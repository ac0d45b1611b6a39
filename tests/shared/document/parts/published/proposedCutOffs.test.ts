import { expect, it } from 'vitest';
import { proposedCutOffs } from '../../../../../shared/document/parts/published/proposedCutOffs.ts';

it('proposes C of a straight -8 flare end from both tables: 0.93 in, 23.622 mm', () => {
  const offers = proposedCutOffs({ seat: 'flare-37', dash: 8, bendAngleDeg: 0 });
  expect(offers.map((o) => o.cutOffMm)).toEqual([23.622, 23.622]);
  expect(offers[0]?.words).toBe(
    'straight, flared, NAVEDTRA 14018 table 5-2: 0.93 in printed for one. Published for that fitting: measure yours.',
  );
  expect(offers[1]?.words).toContain('1.86 in printed, a pair value: half of it for one');
});

it('shows the doubtful 3.58 in of the -8 45 degree swivel and proposes nothing from it', () => {
  const offers = proposedCutOffs({ seat: 'flare-37', dash: 8, bendAngleDeg: 45 });
  expect(offers).toHaveLength(1);
  expect(offers[0]?.cutOffMm).toBeUndefined();
  expect(offers[0]?.words).toContain('3.58 in printed; doubtful and not used');
});

it('proposes nothing where the table does not say of how many fittings it speaks', () => {
  for (const dash of [3, 4, 5, 6, 10, 12, 16, 20])
    for (const bendAngleDeg of [45, 90])
      expect(proposedCutOffs({ seat: 'flare-37', dash, bendAngleDeg }).map((o) => o.cutOffMm)).toEqual([undefined]);
  expect(proposedCutOffs({ seat: 'face', form: 'flange', dash: 8, bendAngleDeg: 0 })[0]?.words).toContain(
    'is not said in what was read',
  );
});

it('is silent on other seats, sizes and angles', () => {
  expect(proposedCutOffs({ seat: 'orfs', dash: 8, bendAngleDeg: 0 })).toEqual([]);
  expect(proposedCutOffs({ seat: 'flare-37', dash: 7, bendAngleDeg: 0 })).toEqual([]);
  expect(proposedCutOffs({ seat: 'flare-37', dash: 8, bendAngleDeg: 30 })).toEqual([]);
  expect(proposedCutOffs({ seat: 'flare-37', form: 'banjo', dash: 8, bendAngleDeg: 90 })).toEqual([]);
});
