import { DoubleSide, MeshBasicMaterial } from 'three';
import { useStore } from 'zustand';
import { backwardsEnd } from '../../shared/document/lay/backwardsEnd.ts';
import type { Lay } from '../../shared/document/lay/schema.ts';
import { useBench, useSession } from '../state/useBench.ts';
import type { ScenePalette } from './palette.ts';
import { ScreenLabel } from './ScreenLabel.tsx';
import { elbowPath } from './three/endShape.ts';
import { tagLabel } from './three/labelTexture.ts';
import { sweepGeometry } from './three/sweepGeometry.ts';
import { useDisposed } from './useDisposed.ts';

interface GhostProps {
  readonly lay: Lay;
  readonly palette: ScenePalette;
}

type Line = readonly (readonly [number, number, number])[];

/** The chosen hose as it might come out instead: as made, its END B by the clock read backwards, or another way round. In wire, with its name. */
export function GhostInBay({ lay, palette }: GhostProps) {
  const ghost = useSession((state) => state.ghost);
  const { onWays } = useBench();
  const way = useStore(onWays, ({ found, shown }) => (shown === null ? undefined : found?.ways.ways[shown]));
  if (way !== undefined)
    return (
      <Ghost
        line={way.lay.centreline.points}
        radiusMm={lay.outsideDiameterMm / 2}
        name="another way"
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
        palette={palette}
      />
    );
  const made = ghost === 'built' ? lay.built?.centreline?.points : undefined;
  if (made === undefined) return null;
  return <Ghost line={made} radiusMm={lay.outsideDiameterMm / 2} name="as made" palette={palette} />;
}

function Ghost({
  line,
  radiusMm,
  name,
  palette,
}: {
  line: Line;
  radiusMm: number;
  name: string;
  palette: ScenePalette;
}) {
  const material = useDisposed(
    () =>
      new MeshBasicMaterial({
        color: palette.flag.stop.tape,
        wireframe: true,
        side: DoubleSide,
        depthTest: false,
        transparent: true,
      }),
    [palette],
  );
  const geometry = useDisposed(() => sweepGeometry(line, { radiusMm, sides: 8, textureLengthMm: 1 }), [line, radiusMm]);
  const tag = useDisposed(() => {
    const label = tagLabel(name, palette.tag);
    return { label, dispose: () => label.texture.dispose() };
  }, [name, palette]);
  const end = line[line.length - 1] ?? [0, 0, 0];
  return (
    <group>
      <mesh geometry={geometry} material={material} renderOrder={22} />
      <ScreenLabel label={tag.label} at={end} foot={[-0.06, 0.5]} order={23} />
    </group>
  );
}
