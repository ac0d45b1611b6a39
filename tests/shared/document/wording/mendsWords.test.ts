import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../../shared/document/lay/schema.ts';
import type { MendAnswer, NearMend } from '../../../../shared/document/mends/schema.ts';
import { lackOf, nearestWords, triedWords, verdictWords } from '../../../../shared/document/wording/mendsWords.ts';
import { sampleFinding } from '../../../renderer/sampleBench.ts';

const finding = (message: string, severity: Finding['severity'] = 'look'): Finding =>
  sampleFinding('feed', { severity, message });

const near = (brings: Finding[], left: Finding[]): NearMend => ({
  mend: { id: 'm', run: 'feed', edit: { kind: 'bleed' }, words: 'A bleed' },
  words: 'A bleed cures: trapped air',
  cures: ['cures: trapped air'],
  brings,
  left,
  toGet: [],
});

const answer = (cured: Finding, stopsLeft = 0): MendAnswer =>
  ({ cured: [{ finding: cured, words: 'cures: it' }], stopsLeft, looksLeft: 1 }) as unknown as MendAnswer;

describe('what was tried, in words', () => {
  it('says whether something mends it, something comes nearer, or nothing does', () => {
    const aimedAt = [finding('a')];
    expect(triedWords({ aimedAt, tried: 0, answers: [] })).toMatch(/^Nothing here/);
    expect(triedWords({ aimedAt, tried: 1, answers: [] })).toBe(
      '1 change tried; none of them mends it, and none comes nearer.',
    );
    expect(triedWords({ aimedAt, tried: 3, answers: [], nearest: [near([], [])] })).toMatch(
      /without making something else worse/,
    );
    expect(triedWords({ aimedAt, tried: 3, answers: [answer(finding('a'))] })).toMatch(
      /^3 changes tried; these mend it/,
    );
  });

  it('tells what makes a hose fit to cut from what cures a part', () => {
    const aimedAt = [finding('a', 'stop'), finding('b', 'stop'), finding('c')];
    const told = (...stops: number[]): string =>
      triedWords({ aimedAt, tried: 9, answers: stops.map((count) => answer(finding('a', 'stop'), count)) });
    expect(told(0, 0)).toContain('after each of these nothing forbids cutting');
    expect(told(0, 1)).toContain('after the first of these nothing forbids cutting; the others');
    expect(told(0, 0, 1)).toContain('after the first 2 of these');
    expect(told(1, 2)).toContain('something still forbids cutting');
    expect(
      triedWords({ aimedAt: aimedAt.slice(0, 1), tried: 9, answers: [answer(finding('a', 'stop'), 1)] }),
    ).toContain('these mend it');
    expect(verdictWords({ stopsLeft: 0, looksLeft: 0 })).toBe('then laid clean');
    expect(verdictWords({ stopsLeft: 0, looksLeft: 2 })).toBe('then fit to cut, 2 to decide first');
    expect(verdictWords({ stopsLeft: 3, looksLeft: 0 })).toBe('still not to be cut, 3 forbid it');
    expect(verdictWords({ stopsLeft: 1, looksLeft: 4 })).toBe('still not to be cut, 1 forbids it, 4 to decide first');
  });

  it('counts what has no answer', () => {
    const [a, b, c] = [finding('a'), finding('b'), finding('c')];
    expect(nearestWords({ aimedAt: [a, b], answers: [] })).toMatch(/^What comes nearest/);
    expect(nearestWords({ aimedAt: [a, b], answers: [answer(a)] })).toMatch(/^Nothing tried cures one of them/);
    expect(nearestWords({ aimedAt: [a, b, c], answers: [answer(b)] })).toMatch(/^Nothing tried cures 2 of them/);
  });

  it('tells what a change lacks once each: what it brings before what stays, the gravest first', () => {
    const [a, b, c, d] = [finding('a'), finding('b', 'stop'), finding('c'), finding('d', 'stop')];
    expect(lackOf(near([a, b], [a, b, c, d])).map(({ message }) => message)).toEqual(['b', 'a', 'd', 'c']);
  });
});
