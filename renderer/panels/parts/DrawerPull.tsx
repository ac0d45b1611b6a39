import { useBench, useDrawer } from '../../state/useBench.ts';
import { Glyph } from '../../widgets/Glyph.tsx';

/** The front of the shut drawer, at the edge of the bay: pulls it out. */
export function DrawerPull() {
  const { onParts } = useBench();
  const isOpen = useDrawer((drawer) => drawer.isOpen);
  if (isOpen) return null;
  return (
    <button type="button" className="drawer-pull" data-over-bay title="Key i" onClick={() => onParts.open()}>
      <Glyph kind="drawer" /> Parts
    </button>
  );
}
