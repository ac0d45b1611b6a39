import { useStore } from 'zustand';
import { backwardsEnd } from '../../shared/document/lay/backwardsEnd.ts';
import type { Lay } from '../../shared/document/lay/schema.ts';
import { useBench, useSession } from '../state/useBench.ts';
import { Ghost } from './Ghost.tsx';
import type { ScenePalette } from './palette.ts';
import { elbowPath } from './three/endShape.ts';

interface GhostProps {
  readonly lay: Lay;
  readonly palette: ScenePalette;
}

/** The chosen hose as it might come out instead: as made, its END B by the clock read backwards, another way round, or mended. In wire, with its name. */
export function GhostInBay({ lay, palette }: GhostProps) {
  const ghost = useSession((state) => state.ghost);
  const { onWays, onMends } = useBench();
  const way = useStore(onWays, ({ found, shown }) => (shown === null ? undefined : found?.ways.ways[shown]));
  const mended = useStore(onMends, ({ found, shown }) =>
    shown === null ? undefined : found?.mends.answers[shown]?.lay,
  );
  if (mended !== undefined && mended.run === lay.run)
    return (
      <Ghost
        line={mended.centreline.points}
        radiusMm={mended.outsideDiameterMm / 2}
        name="mended"
        colour={palette.flag.stop.tape}
        palette={palette}
      />
    );
  if (way !== undefined)
    return (
      <Ghost
        line={way.lay.centreline.points}
        radiusMm={lay.outsideDiameterMm / 2}
        name="another way"
        colour={palette.flag.stop.tape}
        palette={palette}
      />
    );
  const backwards = ghost === 'backwards' ? backwardsEnd(lay) : undefined;
  if (backwards !== undefined)
    return (
      <Ghost
        line={elbowPath(backwards.end)}
        radiusMm={lay.outsideDiameterMm * 0.45}
        name="END B, clock read backwards"
        colour={palette.flag.stop.tape}
        palette={palette}
      />
    );
  const made = ghost === 'built' ? lay.built?.centreline?.points : undefined;
  if (made === undefined) return null;
  return (
    <Ghost
      line={made}
      radiusMm={lay.outsideDiameterMm / 2}
      name="as made"
      colour={palette.flag.stop.tape}
      palette={palette}
    />
  );
}
