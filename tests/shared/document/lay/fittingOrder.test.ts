import { expect, it } from 'vitest';
import { fittingOrder } from '../../../../shared/document/lay/fittingOrder.ts';
import { handsWith, nutWith } from '../../../arbitraries/hands.ts';

function order(before: Readonly<Record<string, readonly string[]>>) {
  return fittingOrder({
    lays: Object.entries(before).map(([run, after]) => ({
      run,
      hands: handsWith(nutWith(), nutWith(), { before: [...after] }),
    })),
  });
}

it('keeps the order of the report where nobody waits', () => {
  expect(order({ c: [], a: [], b: [] })).toEqual({ order: ['c', 'a', 'b'], after: {}, stuck: [] });
});

it('puts a run before those that stand where its wrench goes', () => {
  const answer = order({ a: [], b: ['a'], c: ['b', 'gone'], d: [] });
  expect(answer.order).toEqual(['c', 'b', 'a', 'd']);
  expect(answer.after).toEqual({ a: ['b'], b: ['c'] });
  expect(answer.stuck).toEqual([]);
});

it('tells runs of which neither can be done after the other, and orders the rest', () => {
  const answer = order({ a: ['b'], b: ['a'], c: ['a'], d: ['e'], e: [] });
  expect(answer.stuck).toEqual([['a', 'b']]);
  expect(answer.order).toEqual(['c', 'd', 'e', 'a', 'b']);
  expect(order({ a: ['b'], b: ['c'], c: ['a'] }).stuck).toEqual([['a', 'b', 'c']]);
});

it('takes a report that knows of no hands', () => {
  expect(fittingOrder({ lays: [{ run: 'a' }, { run: 'b' }] }).order).toEqual(['a', 'b']);
});
