import type { PartDrawer } from '../../../shared/document/drawer/partDrawer.ts';
import { partUses } from '../../../shared/document/drawer/partUses.ts';
import type { PartKind, StoredRow } from '../../../shared/document/parts/columns.ts';
import { rowsOfKind } from '../../../shared/document/parts/partSheet.ts';
import { PART_KIND_WORDS } from '../../../shared/document/wording/partWords.ts';
import { draftKey } from '../../state/parts/drawerStore.ts';
import { useBench, useDocument, useDrawer } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { useLengthText } from '../useLengthText.ts';
import { useShownWhen } from '../useShownWhen.ts';
import { partLine, partTitle } from './partLine.ts';

/** The parts of the chosen kind, found by any word on their line. */
export function PartList() {
  const { drawer, onParts } = useBench();
  const open = useDocument((state) => state.open);
  const { kind, search, chosen, drafts } = useDrawer((state) => state);
  const lengthText = useLengthText();
  if (open === null) return null;
  const parts = open.shelf.drawerOf(open.history.present);
  const rows = rowsOfKind<PartKind>(parts.sheets, kind);
  const line = (row: StoredRow[PartKind]): string => partLine(kind, row, (mm) => lengthText(mm, 'nearest'));
  const words = search.toLowerCase().split(/\s+/);
  const found = rows.filter((row) => {
    const text = `${row.id} ${partTitle(row)} ${line(row)} ${row.provenance}`.toLowerCase();
    return words.every((word) => text.includes(word));
  });
  const { one, many } = PART_KIND_WORDS[kind];
  const begun = drafts[draftKey(kind, null)] !== undefined;
  return (
    <section className="slip part-list" aria-label={`All ${many}`}>
      <div className="part-tools">
        <input
          className="text-input"
          type="search"
          aria-label={`Find ${many}`}
          placeholder="Find: size, name, seat"
          value={search}
          onChange={(event) => drawer.set({ search: event.target.value })}
        />
        <Button onPress={onParts.startNew}>{begun ? `Go on with the new ${one}` : `New ${one}`}</Button>
      </div>
      <ul className="part-rows" aria-label={many}>
        {found.map((row) => (
          <PartRow
            key={row.id}
            kind={kind}
            row={row}
            parts={parts}
            line={line(row)}
            chosen={chosen[kind] === row.id}
            begun={drafts[draftKey(kind, row.id)] !== undefined}
          />
        ))}
        {found.length === 0 && rows.length > 0 && (
          <li className="teach part-none">None of these has that on its line.</li>
        )}
      </ul>
      <div className="part-files">
        <Button look="quiet" onPress={() => void onParts.bringIn()}>
          Bring in a CSV
        </Button>
        <Button look="quiet" disabled={rows.length === 0} onPress={() => void onParts.exportKind()}>
          Write a CSV
        </Button>
      </div>
    </section>
  );
}

interface PartRowProps {
  readonly kind: PartKind;
  readonly row: StoredRow[PartKind];
  readonly parts: PartDrawer;
  readonly line: string;
  readonly chosen: boolean;
  readonly begun: boolean;
}

function PartRow({ kind, row, parts, line, chosen, begun }: PartRowProps) {
  const { onParts } = useBench();
  const place = useShownWhen<HTMLLIElement>(chosen);
  const uses = partUses(parts, kind, row.id).length;
  return (
    <li ref={place}>
      <button
        type="button"
        className="part-row"
        aria-current={chosen ? 'true' : undefined}
        onClick={() => onParts.choose(row.id)}
      >
        <span className="part-name">{partTitle(row)}</span>
        <span className="part-line">
          {[line, ...(uses > 0 ? ['in use'] : []), ...(row.provenance === 'example' ? ['example'] : [])].join(' · ')}
          {begun && <b> · not kept yet</b>}
        </span>
      </button>
    </li>
  );
}
