import { useThree } from '@react-three/fiber';
import { useEffect } from 'react';
import { useStore } from 'zustand';
import type { Vec3 } from '../../shared/base/vec3.ts';
import type { OpenDocument } from '../state/documentStore.ts';
import { upFor } from '../state/edits/portEdits.ts';
import { type Aim, looksForPlace, type Tool } from '../state/handStore.ts';
import { useBench } from '../state/useBench.ts';
import { aimAt, withRim } from './aimAt.ts';
import { middlePress } from './middlePress.ts';
import { PortMark } from './PortMark.tsx';
import type { ScenePalette } from './palette.ts';
import { rayAt } from './useBayDrag.ts';

interface BayAimProps {
  readonly bay: NonNullable<OpenDocument['bay']>;
  readonly palette: ScenePalette;
}

/** ms that the pointer rests before the rim under it is looked for. */
const REST_MS = 90;
/** px that a click may tremble. */
const TREMBLE_PX = 4;

/** While a tool looks for a place of the bay: the place under the pointer, marked, and the click that takes it. */
export function BayAim({ bay, palette }: BayAimProps) {
  const { hand } = useBench();
  const tool = useStore(hand, (state) => state.tool);
  const aim = useStore(hand, (state) => state.aim);
  const looking = looksForPlace(tool);
  useAim(bay, looking);
  if (aim === null || (tool.kind !== 'seat' && tool.kind !== 'measure')) return null;
  const [at, axis] = aim.rim ? [aim.rim.centre, aim.rim.axis] : [aim.point, aim.normal];
  return (
    <PortMark at={at} axis={axis} up={upFor(axis)} radiusMm={aim.rim?.radiusMm ?? 4} colour={palette.selected} solid />
  );
}

function useAim(bay: BayAimProps['bay'], looking: boolean): void {
  const { hand, jobs, onBay, onMeasure, onRod, onSquareUp, section, session } = useBench();
  const canvas = useThree((three) => three.gl.domElement);
  const camera = useThree((three) => three.camera);
  const invalidate = useThree((three) => three.invalidate);
  useEffect(() => {
    if (!looking) return;
    let rest: ReturnType<typeof setTimeout> | undefined;
    let pressed: { x: number; y: number } | null = null;
    let takenByKey: Vec3 | null = null;
    const look = (event: Pick<PointerEvent, 'clientX' | 'clientY'>) =>
      aimAt(bay, rayAt(event, canvas, camera), session.getState().parts, section.getState());
    const move = (event: PointerEvent): void => {
      clearTimeout(rest);
      if (event.buttons !== 0) return;
      const aim = look(event);
      hand.set({ aim, middle: 0 });
      takenByKey = null;
      invalidate();
      if (aim !== null && wantsRim(hand.getState().tool.kind))
        rest = setTimeout(() => hand.getState().aim === aim && hand.set({ aim: withRim(bay, aim) }), REST_MS);
    };
    const down = (event: PointerEvent): void => {
      pressed = event.button === 0 ? { x: event.clientX, y: event.clientY } : null;
    };
    const up = (event: PointerEvent): void => {
      const click = pressed !== null && Math.hypot(event.clientX - pressed.x, event.clientY - pressed.y) <= TREMBLE_PX;
      pressed = null;
      const aim = click ? look(event) : null;
      if (aim !== null) take(aim);
    };
    const take = (aim: Aim): void => {
      const { kind } = hand.getState().tool;
      const taken = wantsRim(kind) ? withRim(bay, aim) : aim;
      if (kind === 'rod') onRod.pick(aim);
      else if (kind === 'measure') onMeasure.take(taken);
      else if (kind === 'level') onSquareUp.pick(aim);
      else onBay.take(taken);
    };
    /** By key: what lies in the middle of the picture is marked first, and taken once when it is asked for once more. */
    const stop = hand.subscribe(({ middle, aim }, before) => {
      if (middle === 0 || middle === before.middle) return;
      const { left, top, width, height } = canvas.getBoundingClientRect();
      const there = look({ clientX: left + width / 2, clientY: top + height / 2 });
      // The first press with this tool.
      if (before.middle === 0) takenByKey = null;
      const marked = before.middle === 0 ? null : (aim?.point ?? null);
      const press = middlePress({ there: there?.point ?? null, marked, taken: takenByKey });
      if (press === 'taken')
        jobs.tell('This place is taken', ['Move the look first (Shift with an arrow), then press z.']);
      else if (press === 'take' && there !== null) {
        take(there);
        takenByKey = there.point;
        hand.set({ aim: null });
      } else hand.set({ aim: there !== null && wantsRim(hand.getState().tool.kind) ? withRim(bay, there) : there });
      invalidate();
    });
    canvas.addEventListener('pointermove', move);
    canvas.addEventListener('pointerdown', down);
    canvas.addEventListener('pointerup', up);
    return () => {
      clearTimeout(rest);
      stop();
      canvas.removeEventListener('pointermove', move);
      canvas.removeEventListener('pointerdown', down);
      canvas.removeEventListener('pointerup', up);
    };
  }, [bay, looking, canvas, camera, hand, jobs, onBay, onMeasure, onRod, onSquareUp, section, session, invalidate]);
}

/** Ports sit in round rims, and distances are mostly wanted from the middle of one. */
function wantsRim(kind: Tool['kind']): boolean {
  return kind === 'seat' || kind === 'measure';
}
