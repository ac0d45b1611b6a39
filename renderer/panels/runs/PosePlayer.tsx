import type { Breath, Lay, Rock } from '../../../shared/document/lay/schema.ts';
import { formatNumber } from '../../../shared/sheets/format/index.ts';
import { useBench, useSession } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { Slider } from '../../widgets/Slider.tsx';
import { Length } from '../Length.tsx';

/**
 * The hose shown in its other shapes, each laid and none drawn between (at the extremes of the bodies' motion, and under
 * pressure), and the bay as the hose sees it.
 */
export function PosePlayer({ lay }: { lay: Lay }) {
  const rock = lay.rock?.extremes.some(({ line }) => line !== undefined) === true ? lay.rock : undefined;
  const breaths = lay.breathing?.filter(({ line }) => line !== undefined) ?? [];
  if (lay.centreline.points.length < 2) return null;
  return (
    <section className="poses" aria-label="Shown as it moves">
      <h3>Shown as it moves</h3>
      {rock !== undefined && <RockSlider rock={rock} />}
      <HoseEye lay={lay} />
      {breaths.length > 0 && <Breaths breathing={lay.breathing ?? []} />}
    </section>
  );
}

function RockSlider({ rock }: { rock: Rock }) {
  const { session } = useBench();
  const pose = useSession((state) => state.pose);
  const at = pose?.kind === 'rock' ? Math.min(pose.extreme, rock.extremes.length - 1) : 0;
  const name = rock.extremes[at]?.pose.name ?? 'at rest';
  return (
    <Slider
      most={rock.extremes.length - 1}
      at={at}
      words={name}
      onMove={(extreme) => session.set({ pose: extreme === 0 ? null : { kind: 'rock', extreme } })}
    >
      <b>{name}</b>
      <span className="pose-count">
        {at === 0 ? 'as it stands' : `extreme ${at} of ${rock.extremes.length - 1}`} <kbd>[</kbd> <kbd>]</kbd>
      </span>
    </Slider>
  );
}

function Breaths({ breathing }: { breathing: readonly Breath[] }) {
  const { session } = useBench();
  const pose = useSession((state) => state.pose);
  return (
    <div className="support-buttons">
      {breathing.map(({ change, line, taut }, breath) => {
        const shown = pose?.kind === 'breath' && pose.breath === breath;
        const words = `${change > 0 ? '+' : ''}${formatNumber(change * 100, 0)} % under pressure`;
        return (
          <Button
            key={change}
            pressed={shown}
            disabled={line === undefined}
            {...(taut ? { hint: 'It is taut there: there is no shape to show' } : {})}
            onPress={() => session.set({ pose: shown ? null : { kind: 'breath', breath } })}
          >
            {words}
          </Button>
        );
      })}
    </div>
  );
}

/** mm. A step of the ride. */
const RIDE_STEP_MM = 5;

function HoseEye({ lay }: { lay: Lay }) {
  const { hover, session } = useBench();
  const eyeMm = useSession((state) => state.eyeMm);
  const ride = (to: number): void => {
    session.set({ eyeMm: to });
    hover.setState({ place: { run: lay.run, arcLengthMm: to, from: 'bay' } });
  };
  return (
    <Slider
      name="Along the hose from END A to END B"
      most={Math.floor(lay.cutLengthMm)}
      step={RIDE_STEP_MM}
      at={eyeMm}
      onMove={ride}
    >
      <Button
        pressed={eyeMm !== null}
        hint="Key Shift E"
        onPress={() => (eyeMm === null ? ride(0) : session.set({ eyeMm: null }))}
      >
        Look along from inside
      </Button>
      {eyeMm !== null && <Length mm={eyeMm} both />}
    </Slider>
  );
}
