import { expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { parseProject } from '../../../../shared/document/project/parseProject.ts';
import { serialiseProject } from '../../../../shared/document/project/serialiseProject.ts';
import { samplePort, sampleProject, sampleRun } from '../../../arbitraries/projects.ts';

it('reads back what it wrote, for random figures too', () => {
  const random = seededRandom(7);
  const any = (): number => (random() - 0.5) * 10 ** Math.floor(random() * 20 - 10);
  for (let i = 0; i < 200; i++) {
    const project = sampleProject({
      name: `Größe "${i}" \n \u2028 \\ 🔧`,
      ports: [
        samplePort({ seatPoint: [any(), any(), any()] }),
        samplePort({ id: 'p2', seatPoint: [any(), 0, any()], axis: [0, 1 + random() * 1e6, 0] }),
      ],
      runs: [
        sampleRun({ slack: random() / 2, supports: [{ id: 'w', kind: 'waypoint', point: [any(), any(), any()] }] }),
      ],
    });
    expect(parseProject(serialiseProject(project))).toEqual({ ok: true, value: project });
  }
});

it('writes keys in the schema order whatever order they were set in', () => {
  const project = sampleProject();
  const turned = Object.fromEntries(Object.entries(project).reverse()) as typeof project;
  expect(serialiseProject(turned)).toBe(serialiseProject(project));
});

it('ends in one line end and indents by two', () => {
  const text = serialiseProject(sampleProject());
  expect(text).toMatch(/^\{\n {2}"format": "hosewright-project",\n {2}"version": 1,\n[\s\S]*\}\n$/);
});

it('never writes minus zero, which JSON reads back as another number', () => {
  const project = sampleProject({ ports: [samplePort({ seatPoint: [-0, 0, 0] }), samplePort({ id: 'p2' })] });
  const text = serialiseProject(project);
  const read = parseProject(text.replace('0,', '-0,'));
  expect(read.ok && serialiseProject(read.value)).toBe(text);
});

it('stops on a project that is none', () => {
  expect(() => serialiseProject(sampleProject({ seed: Number.NaN }))).toThrow(/serialiseProject/);
});
