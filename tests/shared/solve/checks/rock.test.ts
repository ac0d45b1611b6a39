import { describe, expect, it } from 'vitest';
import type { Finding, RockExtreme } from '../../../../shared/document/lay/schema.ts';
import type { RuleOverride } from '../../../../shared/document/project/schema.ts';
import { clearanceTo, rockWith, straightLay } from '../../../arbitraries/lays.ts';
import { findingsOf, resolved } from './context.ts';

const AT = { arcLengthMm: 200, point: [200, 0, 0] as [number, number, number] };
const PLAIN = { kind: 'skin', id: 'plain', part: 'block' } as const;

function found(changes: Partial<RockExtreme>, overrides: RuleOverride[] = []): Finding[] {
  return findingsOf('rock', resolved({ overrides }), straightLay({ rock: rockWith(changes) }));
}

function told(changes: Partial<RockExtreme>): string[][] {
  return found(changes).map((f) => [f.severity, f.rule]);
}

const bends = (mm: number): Partial<RockExtreme> => ({ minRadius: { provenAtLeastMm: mm, at: AT } });
const near = (mm: number): Partial<RockExtreme> => ({ tightest: clearanceTo(PLAIN, mm, 13) });

describe('rock', () => {
  it('says nothing of a hose that keeps everything, of a lay whose bodies stand still, and of one that is carried', () => {
    expect(told({})).toEqual([]);
    expect(findingsOf('rock', resolved(), straightLay())).toEqual([]);
    const carried = rockWith({ slackLeftMm: -1 }, { carried: true });
    expect(findingsOf('rock', resolved(), straightLay({ rock: carried }))).toEqual([]);
  });

  // Mutation: each limit a little broken brings the finding, and a little kept takes it away.
  it('stops a hose that goes tight', () => {
    expect(told({ slackLeftMm: 0 })).toEqual([]);
    expect(told({ slackLeftMm: -0.1 })).toEqual([['stop', 'rock-slack']]);
  });

  it('says at what share of the motion it goes tight, and by how much it does not reach', () => {
    const rock = rockWith(
      { slackLeftMm: -14.3, outcome: 'too-short', missingMm: 14.3 },
      { tightAt: { share: 0.219, extreme: 1 } },
    );
    const [finding] = findingsOf('rock', resolved(), straightLay({ rock }));
    expect(finding?.message).toMatch(/With engine at roll \+3 degrees the hose is 14\.3 mm/);
    expect(finding?.message).toMatch(/too short to reach/);
    expect(finding?.message).toMatch(/21 % of the motion/);
    expect(finding?.mend).toMatch(/14\.3 mm/);
    expect(finding?.source).toMatch(/14105/);
  });

  it('stops a bend under the radius of the hose, to the accuracy of its curvature', () => {
    // The sample hose: 100 mm inside, 15.8 mm outside diameter: 107.9 mm at the centreline; 0.1 % is 0.108 mm.
    expect(told(bends(107.9))).toEqual([]);
    expect(told(bends(107.85))).toEqual([]);
    expect(told(bends(107.7))).toEqual([['stop', 'rock-radius']]);
  });

  it('leaves a bend alone that is too tight at rest already', () => {
    const minRadius = { radiusMm: 90, provenAtLeastMm: 89, limitMm: 107.9, at: AT };
    expect(findingsOf('rock', resolved(), straightLay({ minRadius, rock: rockWith(bends(80)) }))).toEqual([]);
  });

  it('looks at clearance under what is asked, and stops at a touch', () => {
    expect(told(near(13))).toEqual([]);
    expect(told(near(12.9))).toEqual([['look', 'rock-clearance']]);
    expect(told(near(0))).toEqual([['stop', 'rock-clearance']]);
  });

  it('says a clearance that is short at rest again only where it comes to a touch', () => {
    const withRest = (mm: number) =>
      findingsOf(
        'rock',
        resolved(),
        straightLay({ clearances: [clearanceTo(PLAIN, 8, 13)], rock: rockWith(near(mm)) }),
      );
    expect(withRest(7)).toEqual([]);
    expect(withRest(-1).map((f) => f.severity)).toEqual(['stop']);
  });

  it('looks at twist of more than 7 degrees, either way', () => {
    expect(told({ twistDeg: 7 })).toEqual([]);
    expect(told({ twistDeg: 7.1 })).toEqual([['look', 'rock-twist']]);
    expect(told({ twistDeg: -7.1 })).toEqual([['look', 'rock-twist']]);
    expect(found({ twistDeg: 8 })[0]?.dissent).toMatch(/not twisted at all/);
  });

  it('looks where no lay at rest was found', () => {
    expect(told({ outcome: 'unsettled' })).toEqual([['look', 'rock-settles']]);
  });

  it('takes a stricter slack with its reason', () => {
    const stricter = [{ rule: 'rock-slack', value: 38, reason: 'army rule' }];
    const [finding] = found({}, stricter);
    expect(finding?.severity).toBe('stop');
    expect(finding?.message).toMatch(/20\.0 mm.* of slack left.*army rule/);
  });
});
