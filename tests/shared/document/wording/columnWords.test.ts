import { expect, it } from 'vitest';
import { columnsOf, PART_KINDS } from '../../../../shared/document/parts/columns.ts';
import { choiceWords, columnLabel, columnUnit } from '../../../../shared/document/wording/columnWords.ts';

it('reads keys as the trade says them', () => {
  expect(
    ['outsideDiameterMm', 'maxTemperatureC', 'bendingStiffnessNmm2', 'cutOffMm', 'batch'].map(columnLabel),
  ).toEqual(['Outside diameter', 'Max temperature', 'Bending stiffness', 'C, cut-off', 'Batch']);
  expect(['outsideDiameterMm', 'maxTemperatureC', 'weightKgPerM', 'weightG', 'dash', 'source'].map(columnUnit)).toEqual(
    ['mm', '°C', 'kg/m', 'g', undefined, undefined],
  );
});

it('gives each column of a kind a label of its own, each choice words of its own', () => {
  for (const kind of PART_KINDS) {
    const columns = columnsOf(kind);
    const labels = columns.map(({ key }) => columnLabel(key));
    expect([kind, new Set(labels).size]).toEqual([kind, labels.length]);
    for (const { key, cell, choices = [] } of columns) {
      const words = choices.map((value) => choiceWords(kind, key, value));
      expect(new Set(words).size).toBe(words.length);
      if (cell === 'text')
        for (const word of words) expect([key, word]).toEqual([key, expect.stringMatching(/^[A-Z]/)]);
    }
  }
});
