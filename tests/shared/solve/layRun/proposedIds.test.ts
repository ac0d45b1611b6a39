import { expect, it } from 'vitest';
import { proposedIds } from '../../../../shared/solve/layRun/proposedIds.ts';

it('numbers clamps past every id that is in use', () => {
  const named = (...ids: string[]) => ids.map((id) => ({ id })) as never[];
  expect(proposedIds({ supports: [] }, { stations: [] }, [], 2)).toEqual(['proposed-1', 'proposed-2']);
  const inUse = [{ supports: named('own') }, { stations: named('proposed-1', 'lock') }, named('proposed-3')] as const;
  expect(proposedIds(...inUse, 3)).toEqual(['proposed-2', 'proposed-4', 'proposed-5']);
  expect(proposedIds({ supports: named('proposed-1') }, { stations: [] }, [], 1)).toEqual(['proposed-2']);
});
