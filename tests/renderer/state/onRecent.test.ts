import { describe, expect, it } from 'vitest';
import { KEY_ACTIONS } from '../../../renderer/state/keys.ts';
import type { RecentProject } from '../../../shared/desktop/contract.ts';
import { SAMPLE_BAY, sampleBench } from '../sampleBench.ts';

const BAY: RecentProject = { id: 'x', label: 'bay', where: '/bays/bay', missing: false };

function recentBench() {
  let left: readonly RecentProject[] = [BAY];
  const opened: string[] = [];
  const made = sampleBench(
    { openProject: SAMPLE_BAY },
    {
      recentProjects: async () => left,
      openRecent: async (id) => {
        opened.push(id);
        return { ok: false, problems: [{ path: '', message: 'not found' }] };
      },
      forgetRecent: async (id) => {
        left = left.filter((one) => one.id !== id);
        return left;
      },
    },
  );
  return { ...made, opened };
}

describe('projects opened lately', () => {
  it('are shown and put away by one key once a project is open, and by Escape', async () => {
    const { bench } = recentBench();
    const key = (shown: string) => KEY_ACTIONS.find((action) => action.shown === shown)?.act(bench);
    key('Shift O');
    expect(bench.onRecent.getState().isOpen).toBe(false);
    await bench.openGiven();
    key('Shift O');
    await Promise.resolve();
    await Promise.resolve();
    expect(bench.onRecent.getState()).toMatchObject({ isOpen: true, projects: [BAY] });
    key('Escape');
    expect(bench.onRecent.getState().isOpen).toBe(false);
  });

  it('one that cannot be opened says why and leaves what is on the bench', async () => {
    const { bench, opened } = recentBench();
    await bench.openGiven();
    const before = bench.document.getState().open;
    await bench.onRecent.open('x');
    expect(opened).toEqual(['x']);
    expect(bench.jobs.getState().notice?.title).toBe('The project could not be opened');
    expect(bench.document.getState().open).toBe(before);
  });

  it('are taken off the list', async () => {
    const { bench } = recentBench();
    await bench.onRecent.look();
    await bench.onRecent.forget('x');
    expect(bench.onRecent.getState().projects).toEqual([]);
  });
});
