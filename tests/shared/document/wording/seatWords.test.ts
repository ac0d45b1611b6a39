import { expect, it } from 'vitest';
import { seatWords } from '../../../../shared/document/wording/seatWords.ts';

it('writes threads and seats as the trade does, and others word by word', () => {
  expect(seatWords('flare-37')).toBe('37° flare');
  expect(seatWords('orb-8')).toBe('ORB -8');
  expect(seatWords('npt-1-4')).toBe('1/4 NPT');
  expect(seatWords('banjo-m10')).toBe('banjo M10');
  expect(seatWords('banjo-m10-flare-4')).toBe('banjo m10 flare 4');
  expect(seatWords('spring-band')).toBe('spring band');
});
