import { describe, expect, it } from 'vitest';
import type { PickedFile } from '../../../renderer/desktop/projectFromFolder.ts';
import { sittingProjects } from '../../../renderer/desktop/sittingProjects.ts';
import type { OpenedProject } from '../../../shared/desktop/contract.ts';

function picked(folder: string, readable: () => boolean = () => true): readonly PickedFile[] {
  const text = '{"bay":{"meshes":[]},"tables":{}}';
  return [
    {
      name: 'project.json',
      webkitRelativePath: `${folder}/project.json`,
      text: async () => {
        if (!readable()) throw new Error('NotReadableError');
        return text;
      },
      arrayBuffer: async () => new ArrayBuffer(0),
    },
  ];
}

const GIVEN: OpenedProject = { label: 'bay', savesInPlace: true, projectText: '{}', files: [] };

describe('what a browser remembers', () => {
  it('is nothing at first, then the folders picked in this sitting, last first', async () => {
    const sitting = sittingProjects(async () => null);
    expect(sitting.list()).toEqual([]);
    await sitting.picked(picked('bay'));
    await sitting.picked(picked('boat'));
    expect(sitting.list().map(({ label }) => label)).toEqual(['boat', 'bay']);
    const again = await sitting.open(sitting.list()[1]?.id ?? '');
    expect(again?.ok && again.value.label).toBe('bay');
    expect(sitting.forget(sitting.list()[0]?.id ?? '').map(({ label }) => label)).toEqual(['bay']);
  });

  it('says so once the files of one are moved', async () => {
    let there = true;
    const sitting = sittingProjects(async () => null);
    await sitting.picked(picked('bay', () => there));
    there = false;
    const [bay] = sitting.list();
    const again = await sitting.open(bay?.id ?? '');
    expect(again?.ok).toBe(false);
    expect(sitting.list()[0]?.missing).toBe(true);
    there = true;
    await sitting.open(bay?.id ?? '');
    expect(sitting.list()[0]?.missing).toBe(false);
  });

  it('has the project the server was started on, asked anew each time; the example is not listed', async () => {
    const sitting = sittingProjects(async () => ({ ok: true, value: GIVEN }));
    sitting.given({ ok: true, value: { ...GIVEN, label: 'example', savesInPlace: false } });
    expect(sitting.list()).toEqual([]);
    sitting.given({ ok: true, value: GIVEN });
    sitting.given({ ok: true, value: GIVEN });
    expect(sitting.list().map(({ id }) => id)).toEqual(['given']);
    expect((await sitting.open('given'))?.ok).toBe(true);
    expect(await sitting.open('no-such')).toBeNull();
  });
});
