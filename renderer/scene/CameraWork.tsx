import { CameraControls } from '@react-three/drei';
import { useThree } from '@react-three/fiber';
import { type RefObject, useCallback, useEffect, useRef } from 'react';
import { Box3, PerspectiveCamera, Vector3 } from 'three';
import { addScaled } from '../../shared/base/vec3.ts';
import type { Lay } from '../../shared/document/lay/schema.ts';
import { bayBounds } from '../state/bayBounds.ts';
import type { OpenDocument } from '../state/documentStore.ts';
import { placeAt } from '../state/layPlaces.ts';
import { useBench, useSession } from '../state/useBench.ts';
import { coversOver } from './coversOver.ts';
import { fitClear } from './three/fitClear.ts';
import type { FittedView, ViewSubject } from './three/fitView.ts';
import { outlinePoints } from './three/outlinePoints.ts';

type Bay = NonNullable<OpenDocument['bay']>;

/** First look at a bay: from a corner and a little above, as one stands at an open engine. */
const FIRST_LOOK = new Vector3(0.62, 1, 0.74).normalize();

const MARGINS = { left: 0.04, right: 0.04, top: 0.05, bottom: 0.04 } as const;

/** Places along half a bay's diagonal by which the outline of its large faces is told. */
const OUTLINE_PLACES = 30;

/** mm. An eye that has not been moved by more stands where it was put. */
const SAME_EYE_MM = 0.01;

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
  const canvas = useThree((three) => three.gl.domElement);
  const three = useThree((state) => state.get);
  const size = useThree((state) => state.size);
  const fitSerial = useSession((state) => state.fitSerial);
  const heat = useSession((state) => state.heat);
  const fitted = useRef<Fitted | null>(null);
  const hoses = useRef(lays);
  hoses.current = lays;

  /** Fits the bay as `now` has it, with its hoses, which may reach out of it. */
  const lookAtWhole = useCallback(
    (now: Pick<Fitted, 'asked' | 'subject'>): void => {
      const hands = controls.current;
      if (hands === null || !(camera instanceof PerspectiveCamera)) return;
      const points = [...now.subject.points, ...hoses.current.flatMap((lay) => lay.centreline.points.flat())];
      const whole = { ...now.subject, points: Float32Array.from(points) };
      const view = fitClear(camera, whole, MARGINS, coversOver(canvas, three().size));
      const { eye, target } = view;
      hands.setLookAt(eye.x, eye.y, eye.z, target.x, target.y, target.z, false);
      fitted.current = { ...now, view };
      invalidate();
    },
    [camera, canvas, three, invalidate],
  );

  useEffect(() => {
    const hands = controls.current;
    if (hands === null || !(camera instanceof PerspectiveCamera)) return;
    const subject = subjectOf(bay);
    camera.near = subject.sizeMm / 200;
    camera.far = subject.sizeMm * 30;
    camera.updateProjectionMatrix();
    hands.maxDistance = subject.sizeMm * 8;
    // A bay that is read again and lies as it did, with a part left out or cut out, is looked at from where it was.
    const asked = `${fitSerial} ${lieOf(bay)}`;
    if (fitted.current?.asked !== asked) lookAtWhole({ asked, subject });
  }, [bay, camera, fitSerial, lookAtWhole]);

  const laid = lays.map(({ run }) => run).join(' ');
  // As long as the eye has not been moved, the whole bay stays in sight when its place in the window, what lies over it, or
  // which hoses lie in it changes: which is done by the next frame. A hose that is only laid otherwise moves nothing.
  // biome-ignore lint/correctness/useExhaustiveDependencies: looked at anew when the place, a legend or a hose comes or goes
  useEffect(() => {
    const frame = requestAnimationFrame(() => {
      const [hands, before] = [controls.current, fitted.current];
      if (hands !== null && before !== null && standsAt(hands, before.view)) lookAtWhole(before);
    });
    return () => cancelAnimationFrame(frame);
  }, [lookAtWhole, size, heat, laid]);

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
        const tall = 2 * hands.distance * Math.tan(((camera as PerspectiveCamera).fov * rad) / 2);
        const aside = nudge.rightShare !== 0 || nudge.upShare !== 0;
        if (aside) hands.truck(nudge.rightShare * tall, -nudge.upShare * tall, move);
        else if (nudge.nearer === 1) hands.rotate(nudge.aroundDeg * rad, nudge.overDeg * rad, move);
        else hands.dollyTo(hands.distance / nudge.nearer, move);
        invalidate();
      }),
    [session, camera, invalidate],
  );

  useHoseEye(controls, lays);

  return (
    <CameraControls ref={controls} makeDefault smoothTime={stillMotion() ? 0.001 : 0.22} draggingSmoothTime={0.04} />
  );
}

/** The bay as it was last looked at as a whole. */
interface Fitted {
  /** what it was asked for: anew for each bay that lies otherwise, and each time the user asks */
  readonly asked: string;
  readonly subject: ViewSubject;
  readonly view: FittedView;
}

function subjectOf(bay: Bay): ViewSubject {
  const { low, high } = bayBounds(bay);
  const box = new Box3(new Vector3(...low), new Vector3(...high));
  const sizeMm = box.getSize(new Vector3()).length() / 2;
  const points = outlinePoints(bay.positions, bay.indices, sizeMm / OUTLINE_PLACES);
  return { points, look: FIRST_LOOK, centre: box.getCenter(new Vector3()), sizeMm };
}

/** Whether the eye is where a view has it. */
function standsAt(hands: CameraControls, { eye, target }: FittedView): boolean {
  const place = new Vector3();
  return (
    hands.getPosition(place).distanceTo(eye) < SAME_EYE_MM && hands.getTarget(place).distanceTo(target) < SAME_EYE_MM
  );
}

/** What of a bay changes with its scale and its level, and stays while only its parts do. */
function lieOf({ positions }: Bay): string {
  return [positions.length, positions[0], positions[positions.length >> 1], positions.at(-1)].join(' ');
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
