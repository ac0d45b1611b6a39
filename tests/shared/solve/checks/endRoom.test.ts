import { expect, it } from 'vitest';
import { straightLay } from '../../../arbitraries/lays.ts';
import { sampleEnd } from '../../../arbitraries/projects.ts';
import { findingsOf, resolved } from './context.ts';

function found(roomMm: number, overrides: { rule: string; value: number; reason: string }[] = []) {
  const lay = straightLay();
  const room = { roomMm, part: 'block', point: [1, 0, 0] as [number, number, number] };
  const spoilt = { ...lay, ends: { ...lay.ends, b: { ...lay.ends.b, room } } };
  return findingsOf('endRoom', resolved({ overrides }), spoilt);
}

it('stops an end that stands in the bay, names the part, and lets one that just clears it be', () => {
  expect(found(0.1)).toEqual([]);
  expect(found(0)).toEqual([]);
  const [stop] = found(-0.1);
  expect(stop?.severity).toBe('stop');
  expect(stop?.message).toMatch(/END B.*block/);
});

it('says what the end that is there can be turned to', () => {
  const mendOf = (changes: Parameters<typeof sampleEnd>[0]) => {
    const lay = straightLay();
    const room = { roomMm: -2, part: 'block', point: [1, 0, 0] as [number, number, number] };
    const spoilt = { ...lay, ends: { ...lay.ends, b: { ...lay.ends.b, room } } };
    return findingsOf('endRoom', resolved({}, { ends: [sampleEnd(changes)] }), spoilt)[0]?.mend;
  };
  expect(mendOf({})).toBe('Turn its own clock, or take an end of another angle.');
  expect(mendOf({ turning: 'range', turnFromDeg: -30, turnToDeg: 45 })).toMatch(
    /within the -30 to 45 degrees that it turns/,
  );
  expect(mendOf({ turning: 'fixed' })).toMatch(/^It does not turn on its port/);
});

it('looks at an end with less room than the project asks for', () => {
  const asks = [{ rule: 'end-room', value: 5, reason: 'room for a ring spanner' }];
  expect(found(5, asks)).toEqual([]);
  expect(found(4.9, asks).map((f) => f.severity)).toEqual(['look']);
});
