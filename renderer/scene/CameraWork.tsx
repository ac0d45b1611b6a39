import { CameraControls } from '@react-three/drei';
import { useThree } from '@react-three/fiber';
import { useEffect, useRef } from 'react';
import { Box3, type Camera, PerspectiveCamera, Vector3 } from 'three';
import type { OpenDocument } from '../state/documentStore.ts';
import { useBench, useSession } from '../state/useBench.ts';

type Bay = NonNullable<OpenDocument['bay']>;

/** First look at a bay: from a corner and a little above, as one stands at an open engine. */
const FIRST_LOOK = new Vector3(0.62, 1, 0.74).normalize();

/** Share of the bay's radius by which the first look aims low, since tools cover the lower edge of the picture. */
const AIM_LOW = 0.09;

/** A bay is wider than high, so its ball may stand over the picture's edge. */
const FILLED = 0.74;

function stillMotion(): boolean {
  return window.matchMedia('(prefers-reduced-motion: reduce)').matches;
}

/** Turning, sliding and zooming by pointer; the first look; flights to a place. */
export function CameraWork({ bay }: { bay: Bay }) {
  const controls = useRef<CameraControls>(null);
  const { session } = useBench();
  const camera = useThree((three) => three.camera);
  // A move without a transition tells nobody, and nothing is drawn unless asked.
  const invalidate = useThree((three) => three.invalidate);
  const fitSerial = useSession((state) => state.fitSerial);

  // biome-ignore lint/correctness/useExhaustiveDependencies: asked again each time the serial counts up
  useEffect(() => {
    const box = boundsOf(bay);
    const radius = box.getSize(new Vector3()).length() / 2;
    const centre = box.getCenter(new Vector3());
    centre.z -= radius * AIM_LOW;
    const eye = centre.clone().addScaledVector(FIRST_LOOK, standOff(camera, radius));
    camera.near = radius / 200;
    camera.far = radius * 30;
    camera.updateProjectionMatrix();
    const hands = controls.current;
    if (hands === null) return;
    hands.setLookAt(eye.x, eye.y, eye.z, centre.x, centre.y, centre.z, false);
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

  return (
    <CameraControls ref={controls} makeDefault smoothTime={stillMotion() ? 0.001 : 0.22} draggingSmoothTime={0.04} />
  );
}

/** How far to stand from a bay of this radius to have it all in the picture, with a little room. */
function standOff(camera: Camera, radiusMm: number): number {
  if (!(camera instanceof PerspectiveCamera)) return radiusMm * 3;
  const half = (camera.fov * Math.PI) / 360;
  const narrow = Math.min(half, Math.atan(Math.tan(half) * camera.aspect));
  return (radiusMm * FILLED) / Math.sin(narrow);
}

function boundsOf(bay: Bay): Box3 {
  const box = new Box3();
  const point = new Vector3();
  for (const vertex of bay.indices) box.expandByPoint(point.fromArray(bay.positions, vertex * 3));
  return box;
}
