import { CameraControls } from '@react-three/drei';
import { useThree } from '@react-three/fiber';
import { type RefObject, useEffect, useRef } from 'react';
import { Box3, PerspectiveCamera, Vector3 } from 'three';
import { addScaled } from '../../shared/base/vec3.ts';
import type { Lay } from '../../shared/document/lay/schema.ts';
import { bayBounds } from '../state/bayBounds.ts';
import type { OpenDocument } from '../state/documentStore.ts';
import { placeAt } from '../state/layPlaces.ts';
import { useBench, useSession } from '../state/useBench.ts';
import { fitView } from './three/fitView.ts';

type Bay = NonNullable<OpenDocument['bay']>;

/** First look at a bay: from a corner and a little above, as one stands at an open engine. */
const FIRST_LOOK = new Vector3(0.62, 1, 0.74).normalize();

/** The legend and the buttons lie over the lower edge of the picture. */
const MARGINS = { side: 0.04, top: 0.05, bottom: 0.15 } as const;

function stillMotion(): boolean {
  return window.matchMedia('(prefers-reduced-motion: reduce)').matches;
}

/** Turning, sliding and zooming by pointer; the first look; flights to a place. */
export function CameraWork({ bay, lays }: { bay: Bay; lays: readonly Lay[] }) {
  const controls = useRef<CameraControls>(null);
  const { session } = useBench();
  const camera = useThree((three) => three.camera);
  // A move without a transition tells nobody, and nothing is drawn unless asked.
  const invalidate = useThree((three) => three.invalidate);
  const fitSerial = useSession((state) => state.fitSerial);
  const fitted = useRef<string | null>(null);

  // biome-ignore lint/correctness/useExhaustiveDependencies: asked again each time the serial counts up
  useEffect(() => {
    const { low, high } = bayBounds(bay);
    const box = new Box3(new Vector3(...low), new Vector3(...high));
    const radius = box.getSize(new Vector3()).length() / 2;
    const centre = box.getCenter(new Vector3());
    if (!(camera instanceof PerspectiveCamera)) return;
    const { eye, target } = fitView(camera, cornersOf(bay), FIRST_LOOK, centre, radius, MARGINS);
    camera.near = radius / 200;
    camera.far = radius * 30;
    camera.updateProjectionMatrix();
    const hands = controls.current;
    if (hands === null) return;
    // A bay that is read again and lies as it did, with a part left out or cut out, is looked at from where it was.
    const asked = `${fitSerial} ${lieOf(bay)}`;
    if (fitted.current !== asked) hands.setLookAt(eye.x, eye.y, eye.z, target.x, target.y, target.z, false);
    fitted.current = asked;
    hands.maxDistance = radius * 8;
    invalidate();
  }, [bay, camera, fitSerial]);

  useEffect(
    () =>
      session.subscribe(({ flight }, before) => {
        const hands = controls.current;
        if (flight === null || flight === before.flight || hands === null) return;
        const away = hands.getPosition(new Vector3()).sub(hands.getTarget(new Vector3())).normalize();
        const target = new Vector3(...flight.point);
        const eye = target.clone().addScaledVector(away, flight.spanMm * 1.9);
        hands.setLookAt(eye.x, eye.y, eye.z, target.x, target.y, target.z, !stillMotion());
        invalidate();
      }),
    [session, invalidate],
  );

  useEffect(
    () =>
      session.subscribe(({ nudge }, before) => {
        const hands = controls.current;
        if (nudge === null || nudge === before.nudge || hands === null) return;
        const rad = Math.PI / 180;
        const move = !stillMotion();
        if (nudge.nearer === 1) hands.rotate(nudge.aroundDeg * rad, nudge.overDeg * rad, move);
        else hands.dollyTo(hands.distance / nudge.nearer, move);
        invalidate();
      }),
    [session, invalidate],
  );

  useHoseEye(controls, lays);

  return (
    <CameraControls ref={controls} makeDefault smoothTime={stillMotion() ? 0.001 : 0.22} draggingSmoothTime={0.04} />
  );
}

/** What of a bay changes with its scale and its level, and stays while only its parts do. */
function lieOf({ positions }: Bay): string {
  return [positions.length, positions[0], positions[positions.length >> 1], positions.at(-1)].join(' ');
}

/** Triangles that tell an outline; of a scan with more, every so many is looked at. */
const OUTLINE_TRIANGLES = 100_000;

/** One corner of each triangle, or of every so many: enough for the outline, and a mesh may hold vertices of parts left out. */
function cornersOf({ indices, positions }: Bay): Float32Array {
  const triangles = indices.length / 3;
  const step = Math.max(1, Math.ceil(triangles / OUTLINE_TRIANGLES));
  const corners = new Float32Array(3 * Math.ceil(triangles / step));
  for (let i = 0; i < corners.length; i += 3) {
    const at = 3 * (indices[i * step] as number);
    corners[i] = positions[at] as number;
    corners[i + 1] = positions[at + 1] as number;
    corners[i + 2] = positions[at + 2] as number;
  }
  return corners;
}

/** mm. How far ahead of itself the eye that rides along a hose looks, and how near it still sees. */
const AHEAD_MM = 70;
const NEAREST_MM = 2;

/** While the eye rides along the chosen hose, the camera stands on its line and looks along it; then back where it was. */
function useHoseEye(controls: RefObject<CameraControls | null>, lays: readonly Lay[]): void {
  const { session } = useBench();
  const camera = useThree((three) => three.camera);
  const invalidate = useThree((three) => three.invalidate);
  useEffect(() => {
    let outside: { readonly eye: Vector3; readonly target: Vector3; readonly near: number } | null = null;
    const ride = (): void => {
      const { eyeMm, run } = session.getState();
      const hands = controls.current;
      const line = lays.find((lay) => lay.run === run)?.centreline;
      if (hands === null || !(camera instanceof PerspectiveCamera)) return;
      if (eyeMm !== null && line !== undefined) {
        outside ??= {
          eye: hands.getPosition(new Vector3()),
          target: hands.getTarget(new Vector3()),
          near: camera.near,
        };
        const [eye, ahead] = [placeAt(line, eyeMm), placeAt(line, eyeMm + AHEAD_MM)];
        if (eye === null || ahead === null) return;
        camera.near = NEAREST_MM;
        const [x, y, z] = eye.point;
        const [tx, ty, tz] = addScaled(ahead.point, ahead.along, 1);
        hands.setLookAt(x, y, z, tx, ty, tz, false);
      } else if (outside !== null) {
        camera.near = outside.near;
        const { eye, target } = outside;
        hands.setLookAt(eye.x, eye.y, eye.z, target.x, target.y, target.z, !stillMotion());
        outside = null;
      } else return;
      camera.updateProjectionMatrix();
      invalidate();
    };
    return session.subscribe((state, before) => {
      if (state.eyeMm !== before.eyeMm) ride();
    });
  }, [session, controls, lays, camera, invalidate]);
}
