import { expect, it } from 'vitest';
import { setPaperwork } from '../../../renderer/state/edits/paperworkEdits.ts';
import { parseProject } from '../../../shared/document/project/parseProject.ts';
import { serialiseProject } from '../../../shared/document/project/serialiseProject.ts';
import { SAMPLE_PROJECT } from '../sampleBench.ts';

it('keeps what is chosen beside what was, and reads back', () => {
  const once = setPaperwork(SAMPLE_PROJECT, { clockDialect: 'far-at-twelve' });
  const twice = setPaperwork(once, {
    finestInch: 32,
    codedLength: 'eighths',
    paper: 'Letter',
    clockTolerance: 'army-tm',
  });
  expect(twice.paperwork).toEqual({
    clockDialect: 'far-at-twelve',
    finestInch: 32,
    codedLength: 'eighths',
    paper: 'Letter',
    clockTolerance: 'army-tm',
  });
  const read = parseProject(serialiseProject(twice));
  expect(read.ok && read.value.paperwork).toEqual(twice.paperwork);
});

it('goes back to the usual one without a trace', () => {
  const once = setPaperwork(SAMPLE_PROJECT, { paper: 'Letter' });
  expect(setPaperwork(once, { paper: undefined })).toEqual(SAMPLE_PROJECT);
  expect(setPaperwork(once, { paper: undefined })).not.toHaveProperty('paperwork');
});
