import { expect, it } from 'vitest';
import { holdUnsaved } from '../../../renderer/app/holdUnsaved.ts';
import { setRunName } from '../../../renderer/state/edits/runEdits.ts';
import { SAMPLE_BAY, sampleBench } from '../sampleBench.ts';

it('a window is held back by changes that are not saved, and by nothing else', async () => {
  const { bench } = sampleBench({ openProject: SAMPLE_BAY });
  const page = new EventTarget();
  holdUnsaved(page as unknown as Window, bench);
  const closes = (): boolean => page.dispatchEvent(new Event('beforeunload', { cancelable: true }));
  expect(closes()).toBe(true);
  await bench.openGiven();
  expect(closes()).toBe(true);
  bench.document.edit('name', (project) => setRunName(project, 'feed', 'Other'));
  expect(closes()).toBe(false);
  await bench.save();
  expect(closes()).toBe(true);
});
