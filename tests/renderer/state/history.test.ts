import { describe, expect, it } from 'vitest';
import { historyOf, record, redo, redoName, undo, undoName } from '../../../renderer/state/history.ts';

describe('history', () => {
  it('steps back and forward through named edits', () => {
    const edited = record(record(historyOf('a'), 'hose', 'b'), 'slack', 'c');
    expect(undoName(edited)).toBe('slack');
    const back = undo(edited);
    expect([back.present, undoName(back), redoName(back)]).toEqual(['b', 'hose', 'slack']);
    expect(redo(back)).toEqual(edited);
    expect(redo(redo(undo(undo(edited))))).toEqual(edited);
  });

  it('leaves no step for an edit that changes nothing, and none at either end of the road', () => {
    const start = historyOf('a');
    expect(record(start, 'hose', 'a')).toBe(start);
    expect(undo(start)).toBe(start);
    expect(redo(start)).toBe(start);
  });

  it('folds a held key into one step, but not across another edit or an undo', () => {
    let h = historyOf(0);
    for (const value of [1, 2, 3]) h = record(h, 'slack', value, true);
    expect(undo(h).present).toBe(0);
    h = record(record(h, 'hose', 10), 'slack', 11, true);
    expect(undo(h).present).toBe(10);
    h = record(undo(h), 'hose', 12, true);
    expect(h.future).toEqual([]);
    h = record(undo(record(h, 'slack', 13, true)), 'slack', 14, true);
    expect(undo(h).present).toBe(12);
  });

  it('drops what was undone once something else is done', () => {
    const h = record(undo(record(historyOf('a'), 'hose', 'b')), 'slack', 'c');
    expect([h.present, redo(h).present]).toEqual(['c', 'c']);
  });
});
