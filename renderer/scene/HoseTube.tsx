import type { ThreeEvent } from '@react-three/fiber';
import { BackSide, GreaterDepth, MeshBasicMaterial, MeshStandardMaterial } from 'three';
import { distance, type Vec3 } from '../../shared/base/vec3.ts';
import type { Heat } from '../../shared/document/lay/heat.ts';
import type { Lay } from '../../shared/document/lay/schema.ts';
import type { Hose } from '../../shared/document/parts/schema.ts';
import type { HeatView } from '../state/heatScale.ts';
import { nearestArc } from '../state/layPlaces.ts';
import { useBench, useSession } from '../state/useBench.ts';
import { COVER_LOOKS, COVER_REPEAT, coverTexture } from './three/coverTexture.ts';
import { heatTexture } from './three/heatTexture.ts';
import { sweepGeometry } from './three/sweepGeometry.ts';
import { useDisposed } from './useDisposed.ts';

interface HoseTubeProps {
  readonly lay: Lay;
  readonly cover: Hose['cover'];
  readonly selected: boolean;
  readonly stale: boolean;
  readonly outlineColour: string;
  readonly chalkColour: string;
  /** takes hold of the hose there; absent = this hose is not to be taken */
  readonly onPress?: (event: ThreeEvent<PointerEvent>, arcLengthMm: number) => void;
  /** a click on the hose */
  readonly onChoose: (arcLengthMm: number) => void;
}

/** Mm that the outline of the chosen hose stands out: wider than the hatch's lines, thinner than a clamp. */
const OUTLINE_MM = 2.2;
const SIDES = 18;
/** px that a click may tremble; further is a turn of the camera that began on the hose. */
const TREMBLE_PX = 4;

/** A laid hose at its true outside diameter, in the look of its cover; pointing at it marks the place. */
export function HoseTube({
  lay,
  cover,
  selected,
  stale,
  outlineColour,
  chalkColour,
  onPress,
  onChoose,
}: HoseTubeProps) {
  const { hover } = useBench();
  const radiusMm = lay.outsideDiameterMm / 2;
  const path = lay.centreline.points;
  const view = useSession((session) => session.heat);
  const heat = view === null ? undefined : lay.heat;
  const textureLengthMm = heat === undefined ? COVER_REPEAT.lengthMm : lay.cutLengthMm;
  const tube = useDisposed(
    () => sweepGeometry(path, { radiusMm, sides: SIDES, textureLengthMm }),
    [path, radiusMm, textureLengthMm],
  );
  const outline = useDisposed(
    () => sweepGeometry(path, { radiusMm: radiusMm + OUTLINE_MM, sides: SIDES, textureLengthMm: 1 }),
    [path, radiusMm],
  );
  const chalk = stale ? chalkColour : null;
  const look = useDisposed(
    () =>
      heat === undefined || view === null ? hoseMaterial(cover, chalk) : heatMaterial(heat, view, lay.cutLengthMm),
    [cover, chalk, heat, view, lay.cutLengthMm],
  );
  const edge = useDisposed(() => new MeshBasicMaterial({ color: outlineColour, side: BackSide }), [outlineColour]);
  const live = useDisposed(
    () => sweepGeometry(livePath(lay), { radiusMm, sides: SIDES, textureLengthMm: 1 }),
    [lay, radiusMm],
  );
  const behind = useDisposed(() => hiddenMaterial(outlineColour, selected), [outlineColour, selected]);
  const point = (event: ThreeEvent<PointerEvent>): void => {
    event.stopPropagation();
    const arcLengthMm = nearestArc(lay.centreline, event.point.toArray());
    hover.setState({ place: { run: lay.run, arcLengthMm, from: 'bay' } });
  };
  return (
    <group>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: a shape in the picture; the runs list does the same by keyboard */}
      <mesh
        geometry={tube}
        material={look}
        onPointerMove={point}
        onPointerOut={() => hover.setState({ place: null })}
        onPointerDown={(event) => {
          if (event.button === 0) onPress?.(event, nearestArc(lay.centreline, event.point.toArray()));
        }}
        onClick={(event) => {
          if (event.delta <= TREMBLE_PX) onChoose(nearestArc(lay.centreline, event.point.toArray()));
        }}
      />
      <mesh geometry={live} material={behind} renderOrder={10} />
      {selected && <mesh geometry={outline} material={edge} />}
    </group>
  );
}

/** Its own temperature along it, without light and shade, so that a colour is the same wherever it lies. */
function heatMaterial(heat: Heat, view: HeatView, lengthMm: number) {
  const map = heatTexture(heat, view, lengthMm);
  const material = new MeshBasicMaterial({ map, toneMapped: false });
  material.addEventListener('dispose', () => map.dispose());
  return material;
}

/** The hose between its mouths: what its own collars cover is not hidden by the bay. */
function livePath(lay: Lay): readonly Vec3[] {
  const { points, arcLengthMm } = lay.centreline;
  const from = distance(lay.ends.a.shoulderPoint, lay.ends.a.mouthPoint);
  const to = lay.cutLengthMm - distance(lay.ends.b.shoulderPoint, lay.ends.b.mouthPoint);
  const live = points.filter((_, i) => (arcLengthMm[i] ?? 0) >= from && (arcLengthMm[i] ?? 0) <= to);
  return live.length > 1 ? live : points;
}

/** Where covers or parts hide the hose it shows through, so that it can be followed; the chosen one the more. */
function hiddenMaterial(color: string, selected: boolean): MeshBasicMaterial {
  return new MeshBasicMaterial({
    color,
    transparent: true,
    opacity: selected ? 0.62 : 0.16,
    depthFunc: GreaterDepth,
    depthWrite: false,
  });
}

/** A hose whose run has changed since is bare chalk, without its cover: what lies there is no longer meant. */
function hoseMaterial(cover: Hose['cover'], chalk: string | null): MeshStandardMaterial {
  const { roughness, metalness } = COVER_LOOKS[cover];
  if (chalk !== null) return new MeshStandardMaterial({ color: chalk, roughness: 1 });
  return new MeshStandardMaterial({ map: coverTexture(cover), roughness, metalness });
}
