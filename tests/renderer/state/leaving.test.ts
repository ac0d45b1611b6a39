import { describe, expect, it, vi } from 'vitest';
import { setRunName } from '../../../renderer/state/edits/runEdits.ts';
import { KEY_ACTIONS } from '../../../renderer/state/keys.ts';
import type { DesktopApi } from '../../../shared/desktop/contract.ts';
import { SAMPLE_BAY, sampleBench } from '../sampleBench.ts';

async function changedBench(shell: Partial<DesktopApi> = {}) {
  const done: string[] = [];
  const { bench } = sampleBench(
    { openProject: SAMPLE_BAY },
    {
      taken: async () => void done.push('taken'),
      saveProject: async () => {
        done.push('saved');
        return { ok: true, value: { kind: 'saved', where: 'there' } };
      },
      ...shell,
    },
  );
  await bench.openGiven();
  bench.document.edit('name', (project) => setRunName(project, 'feed', 'Other'));
  done.length = 0;
  const name = () => bench.document.getState().open?.history.present.runs[0]?.name;
  const opening = bench.openDemo();
  await vi.waitFor(() => expect(bench.leaving.getState().asked).toBe('Sample'));
  return { bench, done, name, opening };
}

describe('a project with changes that are not saved, when another is to come', () => {
  it('stays until it is said what becomes of it; Escape is to stay', async () => {
    const { bench, done, name, opening } = await changedBench();
    expect(name()).toBe('Other');
    KEY_ACTIONS.find(({ shown }) => shown === 'Escape')?.act(bench);
    await opening;
    expect(name()).toBe('Other');
    expect(done).toEqual([]);
    expect(bench.leaving.getState().asked).toBeNull();
  });

  it('is saved to its own place before the other takes it', async () => {
    const { bench, done, name, opening } = await changedBench();
    bench.leaving.answer('save');
    await opening;
    expect(done).toEqual(['saved', 'taken']);
    expect(name()).toBe('Feed');
  });

  it('stays where it could not be saved, or its place was not chosen', async () => {
    const { bench, name, opening } = await changedBench({
      saveProject: async () => ({ ok: true, value: { kind: 'not-saved' } }),
    });
    bench.leaving.answer('save');
    await opening;
    expect(name()).toBe('Other');
  });

  it('goes where it is let go', async () => {
    const { bench, done, name, opening } = await changedBench();
    bench.leaving.answer('drop');
    await opening;
    expect(done).toEqual(['taken']);
    expect(name()).toBe('Feed');
  });

  it('a second wish takes the place of the first', async () => {
    const { bench, name, opening } = await changedBench();
    const second = bench.openDemo();
    await opening;
    await vi.waitFor(() => expect(bench.leaving.getState().asked).toBe('Sample'));
    bench.leaving.answer('drop');
    await second;
    expect(name()).toBe('Feed');
  });
});

it('without changes nothing is asked', async () => {
  const { bench } = sampleBench({ openProject: SAMPLE_BAY });
  await bench.openGiven();
  await bench.openDemo();
  expect(bench.leaving.getState().asked).toBeNull();
});
