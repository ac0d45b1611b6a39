import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../../shared/document/lay/schema.ts';
import type { MendAnswer, NearMend } from '../../../../shared/document/mends/schema.ts';
import { lackOf, nearestWords, triedWords } from '../../../../shared/document/wording/mendsWords.ts';
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

const answer = (cured: Finding): MendAnswer =>
  ({ cured: [{ finding: cured, words: 'cures: it' }] }) as unknown as MendAnswer;

describe('what was tried, in words', () => {
  it('says whether something mends it, something comes nearer, or nothing does', () => {
    expect(triedWords({ tried: 0, answers: [] })).toMatch(/^Nothing here/);
    expect(triedWords({ tried: 1, answers: [] })).toBe('1 change tried; none of them mends it, and none comes nearer.');
    expect(triedWords({ tried: 3, answers: [], nearest: [near([], [])] })).toMatch(
      /without making something else worse/,
    );
    expect(triedWords({ tried: 3, answers: [answer(finding('a'))] })).toMatch(/^3 changes tried; these mend it/);
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
