import type { Vec3 } from '../../shared/base/vec3.ts';
import type { OpenDocument } from '../state/documentStore.ts';
import type { Hold } from '../state/handStore.ts';
import { useBench } from '../state/useBench.ts';
import { aimAt } from './aimAt.ts';
import { onSurface, onViewPlane } from './handTarget.ts';
import { type BayDrag, useBayDrag } from './useBayDrag.ts';

type Press = Parameters<ReturnType<typeof useBayDrag>>[0];

/** mm that a hose held on a surface stands off it beside its own radius: the foot of a cushioned clamp (from memory). */
const STAND_OFF_MM = 5;

/**
 * Takes the chosen run's hose, or what holds it, in the hand: it moves in the plane of the view through where it was taken,
 * with Alt along the bay's surface.
 */
export function useHoseDrag(bay: OpenDocument['bay'], hoseDiameterMm: number) {
  const { section, session, byHand } = useBench();
  const press = useBayDrag();
  return (event: Press, at: Hold['at'], from: Vec3): void => {
    const drag: BayDrag = {
      begin: () => byHand.grasp(at, from),
      move: (ray, eyeAlong, { altKey, shiftKey }) => {
        const hit = altKey && bay !== null ? aimAt(bay, ray, session.getState().parts, section.getState()) : null;
        const to = hit === null ? onViewPlane(ray, from, eyeAlong) : onSurface(hit, hoseDiameterMm / 2 + STAND_OFF_MM);
        byHand.drag(to, shiftKey);
      },
      end: (moved, { type }) => {
        if (moved && type === 'pointerup') void byHand.release();
        else if (moved) byHand.letGo();
      },
    };
    press(event, drag);
  };
}
