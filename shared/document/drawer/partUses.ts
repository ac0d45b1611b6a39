import type { PartKind } from '../parts/columns.ts';
import { rowsOfKind } from '../parts/partSheet.ts';
import type { Run } from '../project/schema.ts';
import type { PartDrawer } from './partDrawer.ts';

/**
 * What uses a part, each in the user's own words: runs by their names, ports by theirs, rolls by their ids. A part in use
 * is not taken away.
 */
export function partUses({ project, sheets }: PartDrawer, kind: PartKind, id: string): string[] {
  const { runs, ports } = project;
  const named = (uses: (run: Run) => boolean): string[] => runs.filter(uses).map(({ name }) => name);
  switch (kind) {
    case 'hoses':
      return [
        ...named((run) => run.hose === id),
        ...rowsOfKind(sheets, 'rolls').flatMap((roll) => (roll.hose === id ? [`roll ${roll.id}`] : [])),
      ];
    case 'ends':
      return named((run) => run.a.end === id || run.b.end === id);
    case 'sleeves':
      return named((run) => run.sleeve === id);
    case 'clamps':
      return named((run) => run.supports.some(({ part }) => part === id));
    case 'adapters':
      return ports.filter(({ adapters = [] }) => adapters.some((use) => use.adapter === id)).map(({ name }) => name);
    case 'rolls':
      return [];
  }
}
