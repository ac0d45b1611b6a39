import { useState } from 'react';
import { useStore } from 'zustand';
import { add, scale } from '../../../shared/base/vec3.ts';
import {
  type Body,
  CHASSIS_BODY,
  MOST_ROCK_DEG,
  type Motion,
  type Project,
} from '../../../shared/document/project/schema.ts';
import { bodyOfPart } from '../../../shared/document/project/skinOfPart.ts';
import { bayBounds } from '../../state/bayBounds.ts';
import { changeBody, removeBody, stillMotion } from '../../state/edits/bodyEdits.ts';
import { rounded } from '../../state/supportPlaces.ts';
import { useBench, useDocument } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { NumberField } from '../../widgets/NumberField.tsx';
import { TextField } from '../../widgets/TextField.tsx';
import { PointField } from '../LengthField.tsx';

/** What moves as one on its mounts: which parts go together, and how far they turn and shift. */
export function Bodies({ project, names }: { project: Project; names: readonly string[] }) {
  const { onBay } = useBench();
  const [name, setName] = useState('');
  const bodies = project.bay.bodies.filter(({ id }) => id !== CHASSIS_BODY.id);
  return (
    <section className="bodies" aria-label="Bodies">
      <h3>What moves as one</h3>
      <p className="teach">
        Parts bolted together move together: the engine with all that hangs on it. A hose between two bodies is laid
        again at every extreme of their motion. Parts on none are the chassis.
      </p>
      {bodies.map((body) => (
        <BodyFields
          key={body.id}
          body={body}
          count={names.filter((part) => bodyOfPart(project, part).id === body.id).length}
        />
      ))}
      <div className="new-body">
        <TextField label="New body" value={name} mayBeEmpty onSet={setName} />
        <Button
          disabled={name.trim() === ''}
          onPress={() => {
            onBay.newBody(name.trim());
            setName('');
          }}
        >
          Add it and click its parts
        </Button>
      </div>
    </section>
  );
}

function BodyFields({ body, count }: { body: Body; count: number }) {
  const { document, hand } = useBench();
  const filling = useStore(hand, ({ tool }) => tool.kind === 'body' && tool.body === body.id);
  const bay = useDocument(({ open }) => open?.bay ?? null);
  const set = (name: string, change: Parameters<typeof changeBody>[2]): void =>
    document.edit(name, (project) => changeBody(project, body.id, change));
  const begin = (): void => {
    const { low, high } = bay === null ? { low: [0, 0, 0] as const, high: [0, 0, 0] as const } : bayBounds(bay);
    set('motion of a body', { motion: stillMotion(rounded(scale(add(low, high), 0.5), 1)) });
  };
  return (
    <details className="body-fields">
      <summary>
        <b>{body.name}</b>
        <span>
          {count} {count === 1 ? 'part' : 'parts'}, {body.motion === undefined ? 'does not move' : 'moves'}
        </span>
      </summary>
      <TextField label="Name" value={body.name} onSet={(name) => set('name of a body', { name })} />
      <div className="support-buttons">
        <Button
          pressed={filling}
          onPress={() => hand.take(filling ? { kind: 'none' } : { kind: 'body', body: body.id })}
        >
          Click its parts
        </Button>
        {body.motion === undefined ? (
          <Button onPress={begin}>It moves</Button>
        ) : (
          <Button onPress={() => set('motion of a body', { motion: null })}>It stands still</Button>
        )}
        <Button onPress={() => document.edit('remove body', (project) => removeBody(project, body.id))}>
          Take it away
        </Button>
      </div>
      {body.motion !== undefined && (
        <MotionFields motion={body.motion} onSet={(motion) => set('motion of a body', { motion })} />
      )}
    </details>
  );
}

const TURNS = [
  { key: 'rollDeg', words: 'Roll, about x' },
  { key: 'pitchDeg', words: 'Pitch, about y' },
  { key: 'yawDeg', words: 'Yaw, about z' },
] as const;
const SHIFTS = ['x', 'y', 'z'] as const;
/** mm. A body that shifts further does not sit on mounts. */
const MOST_SHIFT_MM = 300;

function MotionFields({ motion, onSet }: { motion: Motion; onSet: (motion: Motion) => void }) {
  return (
    <>
      <PointField label="Turns about" point={motion.pivot} onSet={(pivot) => onSet({ ...motion, pivot: [...pivot] })} />
      {TURNS.map(({ key, words }) => (
        <RangeFields
          key={key}
          words={words}
          unit="°"
          most={MOST_ROCK_DEG}
          range={motion[key]}
          onSet={(range) => onSet({ ...motion, [key]: range })}
        />
      ))}
      {SHIFTS.map((axis) => (
        <RangeFields
          key={axis}
          words={`Shift along ${axis}`}
          unit="mm"
          most={MOST_SHIFT_MM}
          range={motion.shiftMm[axis]}
          onSet={(range) => onSet({ ...motion, shiftMm: { ...motion.shiftMm, [axis]: range } })}
        />
      ))}
    </>
  );
}

interface RangeFieldsProps {
  readonly words: string;
  readonly unit: string;
  readonly most: number;
  readonly range: Motion['rollDeg'];
  readonly onSet: (range: Motion['rollDeg']) => void;
}

/** From rest to the least and to the most: rest lies between. */
function RangeFields({ words, unit, most, range: [least, greatest], onSet }: RangeFieldsProps) {
  return (
    <div className="motion-range">
      <NumberField
        label={`${words}, least`}
        unit={unit}
        value={least}
        low={-most}
        high={0}
        step={0.5}
        decimals={1}
        onSet={(value) => onSet([value, greatest])}
      />
      <NumberField
        label={`${words}, most`}
        unit={unit}
        value={greatest}
        low={0}
        high={most}
        step={0.5}
        decimals={1}
        onSet={(value) => onSet([least, value])}
      />
    </div>
  );
}
