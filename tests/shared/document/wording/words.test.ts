import { expect, it } from 'vitest';
import { OUTCOMES, Severity } from '../../../../shared/document/lay/schema.ts';
import { FLUIDS } from '../../../../shared/document/parts/fluids.ts';
import { CORES, COVERS, END_MATERIALS, JOINTS, PROVENANCES } from '../../../../shared/document/parts/schema.ts';
import { PURPOSES, SKIN_KINDS, VEHICLES } from '../../../../shared/document/project/schema.ts';
import { SKIN_WORDS } from '../../../../shared/document/wording/bayWords.ts';
import {
  CHECK_NAMES,
  CHECK_WORDS,
  OUTCOME_WORDS,
  SEVERITY_WORDS,
} from '../../../../shared/document/wording/findingWords.ts';
import {
  CORE_WORDS,
  COVER_WORDS,
  END_MATERIAL_WORDS,
  JOINT_WORDS,
  PROVENANCE_WORDS,
} from '../../../../shared/document/wording/partWords.ts';
import {
  degreesText,
  lengthText,
  percentText,
  pressureText,
} from '../../../../shared/document/wording/quantityText.ts';
import { FLUID_WORDS, PURPOSE_WORDS, VEHICLE_WORDS } from '../../../../shared/document/wording/serviceWords.ts';

it.each([
  ['purposes', PURPOSES, PURPOSE_WORDS],
  ['fluids', FLUIDS, FLUID_WORDS],
  ['vehicles', VEHICLES, VEHICLE_WORDS],
  ['cores', CORES, CORE_WORDS],
  ['covers', COVERS, COVER_WORDS],
  ['joints', JOINTS, JOINT_WORDS],
  ['materials', END_MATERIALS, END_MATERIAL_WORDS],
  ['provenances', PROVENANCES, PROVENANCE_WORDS],
  ['skins', SKIN_KINDS, SKIN_WORDS],
  ['checks', CHECK_NAMES, CHECK_WORDS],
])('%s each have one word of their own', (_name, keys, words) => {
  expect(Object.keys(words).sort()).toEqual([...keys].sort());
  expect(new Set(Object.values(words)).size).toBe(keys.length);
});

it('severities and outcomes have a word and a meaning', () => {
  expect(Object.keys(SEVERITY_WORDS).sort()).toEqual([...Severity.options].sort());
  expect(Object.keys(OUTCOME_WORDS).sort()).toEqual([...OUTCOMES].sort());
});

it('says quantities both ways and never minus nothing', () => {
  expect(lengthText(76.2)).toBe('76.2 mm (3.00 in)');
  expect(lengthText(-0.01)).toBe('0.0 mm (0.00 in)');
  // 1 psi = 6.894757 kPa: 500 / 6.894757 = 72.52
  expect(pressureText(500)).toBe('500 kPa (73 psi)');
  expect(percentText(0.05)).toBe('5.0 %');
  expect(degreesText(14.96)).toBe('15.0 degrees');
});
