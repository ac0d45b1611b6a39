import { expect, it } from 'vitest';
import { NO_SOURCE } from '../../../../shared/document/rules/rule.ts';
import { handsWith, nutWith, tightNut } from '../../../arbitraries/hands.ts';
import { straightLay } from '../../../arbitraries/lays.ts';
import { findingsOf, resolved } from './context.ts';

const wrench = (...nuts: Parameters<typeof handsWith>) =>
  findingsOf('wrenchAccess', resolved(), straightLay({ hands: handsWith(...nuts) }));

it('is silent of nuts that swing, and of lays of which no hands are known', () => {
  expect(wrench(nutWith(), nutWith())).toEqual([]);
  expect(findingsOf('wrenchAccess', resolved(), straightLay())).toEqual([]);
  expect(findingsOf('secondWrench', resolved(), straightLay())).toEqual([]);
});

// 30 degrees with 12 points: common practice, no source; the check says so.
it('asks for 30 degrees, and says whose word that is', () => {
  expect(wrench(tightNut(30), nutWith())).toEqual([]);
  const [finding] = wrench(tightNut(29.9), nutWith());
  expect(finding).toMatchObject({ severity: 'look', rule: 'wrench-swing', limit: 30, measured: 29.9 });
  expect(finding?.source).toContain(NO_SOURCE);
  expect(finding?.message).toContain('END A');
  expect(finding?.message).toContain('block');
});

it('takes the swing that the project asks for', () => {
  const overrides = [{ rule: 'wrench-swing', value: 60, reason: 'only 6-point wrenches' }];
  const project = resolved({ overrides });
  const at = (deg: number) =>
    findingsOf('wrenchAccess', project, straightLay({ hands: handsWith(tightNut(deg), nutWith()) }));
  expect(at(60)).toEqual([]);
  expect(at(59).map((f) => f.severity)).toEqual(['look']);
});

it('notes an order of fitting where only other hoses are in the way', () => {
  const [finding] = wrench(nutWith(), tightNut(12, { alone: tightNut(80).swing, blockedBy: ['r2'] }));
  expect(finding?.severity).toBe('note');
  expect(finding?.message).toContain('80 degrees before');
  expect(finding?.mend).toBe('Tighten END B before r2 goes on.');
});

it('says what a crow-foot does', () => {
  expect(wrench(tightNut(0, { crowFoot: { widestDeg: 90 } }), nutWith())[0]?.message).toContain(
    'A crow-foot on an extension swings 90 degrees',
  );
  expect(wrench(tightNut(0, { crowFoot: { widestDeg: 25 } }), nutWith())[0]?.message).toContain('no crow-foot');
});

it('forbids cutting only where neither nut can be turned by anything', () => {
  const shut = tightNut(0, { crowFoot: { widestDeg: 0 } });
  expect(wrench(shut, shut).map((f) => f.severity)).toEqual(['stop', 'stop']);
  for (const way of [
    nutWith(),
    tightNut(0, { crowFoot: { widestDeg: 30 } }),
    tightNut(0, { alone: nutWith().swing, blockedBy: ['r2'] }),
  ])
    expect(wrench(shut, way).map((f) => f.severity)).not.toContain('stop');
  const { b: _none, ...alone } = handsWith(shut, shut);
  expect(findingsOf('wrenchAccess', resolved(), straightLay({ hands: alone })).map((f) => f.severity)).toEqual([
    'look',
  ]);
});

it('looks at a second wrench where the adapter’s hex is known, and only there', () => {
  const second = (changes: Partial<NonNullable<ReturnType<typeof nutWith>['second']>>) =>
    findingsOf(
      'secondWrench',
      resolved(),
      straightLay({
        hands: handsWith(nutWith({ second: { hexMm: 22, assumed: false, fits: true, ...changes } }), nutWith()),
      }),
    );
  expect(second({})).toEqual([]);
  expect(second({ fits: false }).map((f) => f.severity)).toEqual(['look']);
  expect(second({ fits: false })[0]?.message).toContain('no room for a second wrench');
  expect(second({ fits: false, holdDeg: 10 })[0]?.message).toContain('two hands');
  expect(second({ fits: false, assumed: true })).toEqual([]);
});
