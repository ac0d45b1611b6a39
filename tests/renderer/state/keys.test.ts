import { describe, expect, it } from 'vitest';
import { KEY_ACTIONS, type KeyPress } from '../../../renderer/state/keys.ts';
import { SAMPLE_BAY, sampleBench } from '../sampleBench.ts';

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
});
