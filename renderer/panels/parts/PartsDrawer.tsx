import { useEffect, useRef } from 'react';
import { PART_KINDS } from '../../../shared/document/parts/columns.ts';
import { rowsOfKind } from '../../../shared/document/parts/partSheet.ts';
import { PART_KIND_WORDS } from '../../../shared/document/wording/partWords.ts';
import { useBench, useDocument, useDrawer } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { Glyph } from '../../widgets/Glyph.tsx';
import { IncomingTable } from './IncomingTable.tsx';
import { PartCard } from './PartCard.tsx';
import { PartList } from './PartList.tsx';

/** The bench drawer with the user's parts, pulled out over the bay: kinds on its front, parts at the left, one on its card. */
export function PartsDrawer() {
  const { onParts } = useBench();
  const open = useDocument((state) => state.open);
  const isOpen = useDrawer((state) => state.isOpen);
  const incoming = useDrawer((state) => state.incoming);
  const drawer = useRef<HTMLElement>(null);
  useEffect(() => {
    if (!isOpen) return;
    const before = document.activeElement;
    drawer.current?.querySelector<HTMLElement>('[aria-current="page"]')?.focus();
    return () => {
      if (before instanceof HTMLElement) before.focus();
    };
  }, [isOpen]);
  if (!isOpen || open === null) return null;
  return (
    <section ref={drawer} className="drawer" aria-labelledby="drawer-title">
      <header className="drawer-front">
        <h2 id="drawer-title">Parts</h2>
        <KindLabels />
        <Button look="quiet" name="Shut the drawer" hint="Escape" onPress={onParts.shut}>
          <Glyph kind="close" />
        </Button>
      </header>
      <PartList />
      {incoming === null ? <PartCard /> : <IncomingTable incoming={incoming} />}
    </section>
  );
}

/** A label holder for each kind, with how many lie in it. */
function KindLabels() {
  const { onParts } = useBench();
  const kind = useDrawer((state) => state.kind);
  const sheets = useDocument(({ open }) => open?.shelf.sheetsOf(open.history.present)) ?? [];
  return (
    <nav aria-label="Kinds of parts">
      <ul className="kind-labels">
        {PART_KINDS.map((one) => {
          const { many } = PART_KIND_WORDS[one];
          const count = rowsOfKind(sheets, one).length;
          return (
            <li key={one}>
              <button
                type="button"
                className="kind-label"
                aria-current={one === kind ? 'page' : undefined}
                onClick={() => onParts.showKind(one)}
              >
                <span className="kind-word">{many}</span> <span className="figure kind-count">{count}</span>
              </button>
            </li>
          );
        })}
      </ul>
    </nav>
  );
}
