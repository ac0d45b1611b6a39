import { DoubleSide, MeshBasicMaterial } from 'three';
import type { ScenePalette } from './palette.ts';
import { ScreenLabel } from './ScreenLabel.tsx';
import { tagLabel } from './three/labelTexture.ts';
import { sweepGeometry } from './three/sweepGeometry.ts';
import { useDisposed } from './useDisposed.ts';

interface GhostProps {
  readonly line: readonly (readonly [number, number, number])[];
  readonly radiusMm: number;
  /** on a tag at its end; empty = no tag */
  readonly name: string;
  readonly colour: string;
  readonly palette: ScenePalette;
}

/** A hose that is not where it is laid, in wire, with its name. */
export function Ghost({ line, radiusMm, name, colour, palette }: GhostProps) {
  const material = useDisposed(
    () =>
      new MeshBasicMaterial({
        color: colour,
        wireframe: true,
        side: DoubleSide,
        depthTest: false,
        transparent: true,
      }),
    [colour],
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
      {name !== '' && <ScreenLabel label={tag.label} at={end} foot={[-0.06, 0.5]} order={23} />}
    </group>
  );
}
