import { describe, expect, it } from 'vitest';
import { fluidCoreCell } from '../../../shared/document/materials/fluidCore.ts';
import { FLUIDS } from '../../../shared/document/parts/fluids.ts';
import { CORES } from '../../../shared/document/parts/schema.ts';
import { RULES } from '../../../shared/document/rules/index.ts';
import { HANDBOOK_CORES, HANDBOOK_GRADES } from './handbookGrades.ts';

describe('what nobody read is said to be from memory', () => {
  it('of a core in a fluid: every grade names where it is from', () => {
    const cells = CORES.flatMap((core) => FLUIDS.map((fluid) => fluidCoreCell(core, fluid))).filter(
      (cell) => cell !== undefined,
    );
    expect(cells.length).toBeGreaterThan(30);
    for (const { source } of cells)
      expect(source).toMatch(
        /from memory|common practice, no source|[a-z]+\.[a-z]{2,3}|Handbook|FAA|SAE|CFR|DOE|p\. \d/,
      );
  });

  it('and says no other than the handbooks do where it is from them: X is unsuitable, A never is', () => {
    for (const [fluid, grades] of Object.entries(HANDBOOK_GRADES))
      for (const [i, core] of HANDBOOK_CORES.entries()) {
        const cell = fluidCoreCell(core, fluid as keyof typeof HANDBOOK_GRADES);
        if (cell === undefined || !cell.source.includes('from memory')) continue;
        if (grades[i] === 'X') expect(cell.grade, `${core} in ${fluid}`).toBe(0);
        if (grades[i] === 'A') expect(cell.grade, `${core} in ${fluid}`).toBeGreaterThan(0);
      }
  });

  it('of a rule: what is published names a document, what is not says so', () => {
    for (const { id, source, grade } of RULES)
      if (grade === 'common-practice') expect(source, id).toMatch(/common practice, no source|from memory/);
      else expect(source, id).not.toMatch(/^common practice|from memory/);
  });
});
