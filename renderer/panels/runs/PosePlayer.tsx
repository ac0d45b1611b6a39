import { useId } from 'react';
import type { Breath, Lay, Rock } from '../../../shared/document/lay/schema.ts';
import { formatNumber } from '../../../shared/sheets/format/index.ts';
import { useBench, useSession } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';

/** The hose shown in its other shapes, each laid and none drawn between: at the extremes of the bodies' motion, and under pressure. */
export function PosePlayer({ lay }: { lay: Lay }) {
  const rock = lay.rock?.extremes.some(({ line }) => line !== undefined) === true ? lay.rock : undefined;
  const breaths = lay.breathing?.filter(({ line }) => line !== undefined) ?? [];
  if (rock === undefined && breaths.length === 0) return null;
  return (
    <section className="poses" aria-label="Shown as it moves">
      <h3>Shown as it moves</h3>
      {rock !== undefined && <RockSlider rock={rock} />}
      {breaths.length > 0 && <Breaths breathing={lay.breathing ?? []} />}
    </section>
  );
}

function RockSlider({ rock }: { rock: Rock }) {
  const { session } = useBench();
  const pose = useSession((state) => state.pose);
  const id = useId();
  const at = pose?.kind === 'rock' ? Math.min(pose.extreme, rock.extremes.length - 1) : 0;
  const name = rock.extremes[at]?.pose.name ?? 'at rest';
  return (
    <div className="pose-slider">
      <label htmlFor={id}>
        <b>{name}</b>
        <span>
          {at === 0 ? 'as it stands' : `extreme ${at} of ${rock.extremes.length - 1}`} <kbd>[</kbd> <kbd>]</kbd>
        </span>
      </label>
      <input
        id={id}
        type="range"
        min={0}
        max={rock.extremes.length - 1}
        step={1}
        value={at}
        aria-valuetext={name}
        onChange={({ target }) => {
          const extreme = Number(target.value);
          session.set({ pose: extreme === 0 ? null : { kind: 'rock', extreme } });
        }}
      />
    </div>
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
