import { DoubleSide, GreaterDepth, Matrix4, MeshBasicMaterial, RingGeometry, Vector3 } from 'three';
import { degreesToRadians } from '../../shared/base/units.ts';
import { cross } from '../../shared/base/vec3.ts';
import type { NutHands } from '../../shared/document/lay/hands.ts';
import type { ScenePalette } from './palette.ts';
import { useDisposed } from './useDisposed.ts';

/** How many flat pieces a whole round is drawn in. */
const PIECES = 90;

/** Where the handle of a wrench swings about a nut: part of a ring from the head to the handle's end, seen through covers. */
export function WrenchSector({ nut, palette }: { nut: NutHands; palette: ScenePalette }) {
  const { swing, wrench } = nut;
  const fromDeg = (swing.middleDeg ?? 0) - swing.widestDeg / 2;
  const ring = useDisposed(() => {
    const pieces = Math.max(1, Math.ceil((PIECES * swing.widestDeg) / 360));
    const [start, width] = [degreesToRadians(fromDeg), degreesToRadians(swing.widestDeg)];
    return new RingGeometry(wrench.headMm / 2, wrench.lengthMm, pieces, 1, start, width).applyMatrix4(frameOf(nut));
  }, [fromDeg, swing.widestDeg, wrench.headMm, wrench.lengthMm, nut.middle.join(), nut.axis.join(), nut.up.join()]);
  const color = palette.selected;
  const before = useDisposed(
    () => new MeshBasicMaterial({ color, transparent: true, opacity: 0.55, side: DoubleSide, depthWrite: false }),
    [color],
  );
  const behind = useDisposed(
    () =>
      new MeshBasicMaterial({
        color,
        transparent: true,
        opacity: 0.25,
        side: DoubleSide,
        depthFunc: GreaterDepth,
        depthWrite: false,
      }),
    [color],
  );
  return (
    <group>
      <mesh geometry={ring} material={behind} renderOrder={12} />
      <mesh geometry={ring} material={before} renderOrder={13} />
    </group>
  );
}

/** Clock 0 along X of the ring, clocks growing to its Y: the port's axis is its Z. */
function frameOf({ middle, axis, up }: NutHands): Matrix4 {
  return new Matrix4()
    .makeBasis(new Vector3(...up), new Vector3(...cross(axis, up)), new Vector3(...axis))
    .setPosition(...middle);
}
