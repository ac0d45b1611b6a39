import { expect, it } from 'vitest';
import { taggedPorts } from '../../../renderer/scene/taggedPorts.ts';
import { SAMPLE_PROJECT } from '../sampleBench.ts';

const texts = (...given: Parameters<typeof taggedPorts>): string[] => taggedPorts(...given).map(({ text }) => text);

it('tags the chosen run’s ends, and all ports by number while they are worked on', () => {
  const [run] = SAMPLE_PROJECT.runs;
  expect(texts(SAMPLE_PROJECT, run!.id, 'runs', null).sort()).toEqual(['END A', 'END B']);
  expect(texts(SAMPLE_PROJECT, run!.id, 'ports', null)).toEqual(SAMPLE_PROJECT.ports.map((_, i) => `${i + 1}`));
  expect(texts(SAMPLE_PROJECT, null, 'runs', null)).toEqual([]);
});

it('tags the ports that a new run may join: its ends, and the free ones by name, shortened where it is long', () => {
  const [first, second, third] = SAMPLE_PROJECT.ports;
  const long = { ...first!, id: 'long', name: 'Oil gallery at the very rear of the head' };
  const project = { ...SAMPLE_PROJECT, runs: [], ports: [first!, second!, ...(third ? [third] : []), long] };
  const joins = { a: second!.id, b: first!.id, next: 'a' } as const;
  expect(texts(project, null, 'runs', joins).slice(0, 2)).toEqual(['END B', 'END A']);
  expect(texts(project, null, 'runs', joins).at(-1)).toBe('Oil gallery at the very…');
  expect(texts(SAMPLE_PROJECT, null, 'runs', joins)).toHaveLength(
    SAMPLE_PROJECT.ports.filter(({ id }) => !SAMPLE_PROJECT.runs.some(({ a, b }) => [a.port, b.port].includes(id)))
      .length,
  );
});
