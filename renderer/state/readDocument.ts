import { bad, good, type Problem, type Result } from '../../shared/base/result.ts';
import type { OpenedProject } from '../../shared/desktop/contract.ts';
import { PART_KINDS } from '../../shared/document/parts/columns.ts';
import { type PartFile, readPartSheets } from '../../shared/document/parts/parsePartTables.ts';
import type { PartSheet } from '../../shared/document/parts/partSheet.ts';
import { parseProject } from '../../shared/document/project/parseProject.ts';
import type { Project } from '../../shared/document/project/schema.ts';

/** The project and the user's part tables out of the files as opened, or every problem in them. */
export function readDocument(opened: OpenedProject): Result<{ project: Project; sheets: readonly PartSheet[] }> {
  const project = parseProject(opened.projectText);
  if (!project.ok) return project;
  const problems: Problem[] = [];
  const partFiles = PART_KINDS.flatMap((kind) =>
    (project.value.tables[kind] ?? []).flatMap((path, i): PartFile[] => {
      const file = opened.files.find((named) => named.path === path);
      if (file !== undefined) return [{ path, kind, text: new TextDecoder().decode(file.bytes) }];
      problems.push({ path: `tables.${kind}[${i}]`, message: 'the file is not beside the project', got: path });
      return [];
    }),
  );
  const sheets = readPartSheets(partFiles);
  if (!sheets.ok) return bad([...problems, ...sheets.problems]);
  return problems.length > 0 ? bad(problems) : good({ project: project.value, sheets: sheets.value });
}
