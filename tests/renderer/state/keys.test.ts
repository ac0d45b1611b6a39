import { describe, expect, it } from 'vitest';
import { actionFor, type KeyField } from '../../../renderer/state/actionFor.ts';
import { KEY_ACTIONS, type KeyPress } from '../../../renderer/state/keys.ts';
import { SAMPLE_BAY, sampleBench, sampleLay, sampleReport } from '../sampleBench.ts';

/** The press that a line of the key list speaks of. */
function press(shown: string): KeyPress {
  const words = shown.split(' ');
  const key = words.at(-1) ?? '';
  const ctrlKey = words.includes('Ctrl');
  const shiftKey = words.includes('Shift');
  return { key: words.length === 1 || shiftKey ? key : key.toLowerCase(), ctrlKey, metaKey: false, shiftKey };
}

describe('keys', () => {
  it('answers each press of the list with the line it stands on and no other', () => {
    for (const action of KEY_ACTIONS) {
      const fitting = KEY_ACTIONS.filter((other) => other.fits(press(action.shown)));
      expect(
        fitting.map((other) => other.words),
        action.shown,
      ).toEqual([action.words]);
    }
  });

  it('leaves to a slider its arrows, and to a field of text all that is typed; what holds anywhere holds there too', () => {
    const words = (shown: string, field: KeyField): string | undefined => actionFor(press(shown), field)?.words;
    const fields: readonly KeyField[] = ['none', 'moved', 'typed'];
    const told = (shown: string): (string | undefined)[] => fields.map((field) => words(shown, field));
    for (const way of ['Left', 'Right', 'Up', 'Down'])
      expect(told(`Shift Arrow${way}`)).toEqual([`move the look ${way.toLowerCase()}`, undefined, undefined]);
    expect(told('j')).toEqual(['next run', 'next run', undefined]);
    expect(told('Ctrl Z')).toEqual(['undo', 'undo', 'undo']);
  });

  it('walks through the runs and round again', async () => {
    const { bench } = sampleBench({ openProject: SAMPLE_BAY });
    await bench.openGiven();
    const next = KEY_ACTIONS.find((action) => action.shown === 'j');
    const seen = [1, 2].map(() => {
      next?.act(bench);
      return bench.session.getState().run;
    });
    expect(seen).toEqual(['drain', 'feed']);
  });

  it.each([
    ['y', 'No clock to read backwards'],
    [']', 'No hose to move'],
    ['Shift E', 'No hose to look along'],
    ['e', 'No hose to settle'],
  ])('says why %s does nothing before the run is laid, and what to do', async (shown, title) => {
    const { bench } = sampleBench({ openProject: SAMPLE_BAY });
    await bench.openGiven();
    KEY_ACTIONS.find((action) => action.shown === shown)?.act(bench);
    expect(bench.jobs.getState().notice).toMatchObject({ title, lines: [expect.stringContaining('lay it first')] });
  });

  it('says why a laid hose has no clock to read backwards, and no movement', async () => {
    const layRuns = { kind: 'done', output: sampleReport([sampleLay('feed')]) } as const;
    const { bench } = sampleBench({ openProject: SAMPLE_BAY, layRuns });
    await bench.openGiven();
    await bench.layAll();
    const told = (shown: string): string | undefined => {
      KEY_ACTIONS.find((action) => action.shown === shown)?.act(bench);
      return bench.jobs.getState().notice?.lines[0];
    };
    expect(told('y')).toContain('goes on at any clock');
    expect(bench.session.getState().ghost).toBeNull();
    expect(told(']')).toContain('how a body moves');
    expect(bench.session.getState().pose).toBeNull();
  });
});
