import { useEffect, useId, useRef } from 'react';
import { useStore } from 'zustand';
import { add, addScaled, dot, scale, type Vec3 } from '../../../shared/base/vec3.ts';
import { bayBounds } from '../../state/bayBounds.ts';
import type { OpenDocument } from '../../state/documentStore.ts';
import { layOf } from '../../state/runState.ts';
import type { CutBox } from '../../state/sectionStore.ts';
import { useBench, useDocument, useSession } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { Glyph } from '../../widgets/Glyph.tsx';
import { Length } from '../Length.tsx';
import { CutOutField } from './CutOutField.tsx';

/** mm. A step of the sliders. */
const STEP_MM = 1;
const AXES = ['x', 'y', 'z'] as const;

/** The bay cut open to look in: by a plane that faces the eye, and by the six sides of a box. Hoses stay whole. */
export function SectionCard({ bay }: { bay: NonNullable<OpenDocument['bay']> }) {
  const { section } = useBench();
  const { plane, box } = useStore(section);
  const bounds = bayBounds(bay);
  const head = useRef<HTMLHeadingElement>(null);
  // Who opens it by a key goes on from here.
  useEffect(() => head.current?.focus(), []);
  return (
    <section className="slip section-card" aria-label="The bay cut open">
      <div className="slip-head">
        <h3 ref={head} tabIndex={-1}>
          Cut open
        </h3>
        <Button look="quiet" disabled={plane === null && box === null} onPress={section.whole}>
          Whole again
        </Button>
        <Button look="quiet" name="Put the cuts away; they stay" onPress={section.shut}>
          <Glyph kind="close" />
        </Button>
      </div>
      <PlaneCut bounds={bounds} />
      <fieldset className="section-box">
        <legend>What stays, side by side</legend>
        {AXES.map((name, k) => (
          <BoxSides key={name} name={name} axis={k as 0 | 1 | 2} bounds={bounds} box={box ?? bounds} />
        ))}
      </fieldset>
      {box !== null && <CutOutField box={box} />}
    </section>
  );
}

/** A plane square to the look, through the chosen hose where it is laid, else through the middle of the bay. */
function PlaneCut({ bounds }: { bounds: CutBox }) {
  const { section } = useBench();
  const plane = useStore(section, (state) => state.plane);
  const run = useSession((session) => session.run);
  const points = useDocument(({ open }) =>
    open === null || run === null ? undefined : layOf(open, run)?.centreline.points,
  );
  const middle = scale(add(bounds.low, bounds.high), 0.5);
  const through: Vec3 = points?.[points.length >> 1] ?? middle;
  const id = useId();
  const reach = Math.hypot(...bounds.high.map((v, k) => v - (bounds.low[k] as number))) / 2;
  const at = plane === null ? 0 : dot(plane.point, plane.away) - dot(middle, plane.away);
  return (
    <div className="section-plane">
      <Button onPress={() => section.faceEye(through)}>
        {plane === null ? 'Cut square to my look' : 'Cut anew, square to my look'}
      </Button>
      {plane !== null && (
        <label htmlFor={id}>
          <span>Nearer or further</span>
          <input
            id={id}
            type="range"
            min={-reach}
            max={reach}
            step={STEP_MM}
            value={at}
            onChange={(event) =>
              section.setPlane({ ...plane, point: addScaled(plane.point, plane.away, Number(event.target.value) - at) })
            }
          />
        </label>
      )}
    </div>
  );
}

interface BoxSidesProps {
  readonly name: string;
  readonly axis: 0 | 1 | 2;
  readonly bounds: CutBox;
  readonly box: CutBox;
}

function BoxSides({ name, axis, bounds, box }: BoxSidesProps) {
  const { section } = useBench();
  const [least, most] = [bounds.low[axis], bounds.high[axis]];
  const set = (side: 'low' | 'high', to: number): void => {
    const value = side === 'low' ? Math.min(to, box.high[axis] - STEP_MM) : Math.max(to, box.low[axis] + STEP_MM);
    const corner = box[side].map((v, k) => (k === axis ? value : v)) as unknown as Vec3;
    section.setBox({ ...box, [side]: corner });
  };
  return (
    <div className="section-side">
      <b>{name}</b>
      {(['low', 'high'] as const).map((side) => (
        <label key={side}>
          <span>{side === 'low' ? 'from' : 'to'}</span>
          <input
            type="range"
            aria-label={`${name} ${side === 'low' ? 'from' : 'to'}`}
            min={Math.floor(least)}
            max={Math.ceil(most)}
            step={STEP_MM}
            value={box[side][axis]}
            onChange={(event) => set(side, Number(event.target.value))}
          />
          <Length mm={box[side][axis]} />
        </label>
      ))}
    </div>
  );
}
