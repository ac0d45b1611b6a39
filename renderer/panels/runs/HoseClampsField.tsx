import type { HoseClamps, Run } from '../../../shared/document/project/schema.ts';
import { type EndTag, setHoseClamps } from '../../state/edits/runEdits.ts';
import { useBench } from '../../state/useBench.ts';
import { Choice } from '../../widgets/Choice.tsx';
import { MaybeLengthField } from '../MaybeLengthField.tsx';

const COUNTS = ['1', '2', '3', '4'];

/** The hose clamps over the barb of a clamped end: how many, how far from the end of the hose, how wide. */
export function HoseClampsField({ run, tag }: { run: Run; tag: EndTag }) {
  const { document } = useBench();
  const name = `END ${tag.toUpperCase()}`;
  const clamps = run[tag].hoseClamps;
  const set = (to: HoseClamps | undefined): void =>
    document.edit(`hose clamps at ${name}`, (project) => setHoseClamps(project, run.id, tag, to));
  return (
    <div className="hose-clamps">
      <Choice
        label={`Hose clamps at ${name}`}
        value={clamps === undefined ? '' : String(clamps.count)}
        options={[{ value: '', label: 'not said' }, ...COUNTS.map((count) => ({ value: count, label: count }))]}
        onChoose={(count) => set(count === '' ? undefined : { ...clamps, count: Number(count) })}
      />
      {clamps !== undefined && (
        <div className="field-pair">
          <ClampLength label={`${name}: nearest to the end of the hose`} of="fromHoseEndMm" clamps={clamps} set={set} />
          <ClampLength label={`${name}: width of a band`} of="bandMm" clamps={clamps} set={set} />
        </div>
      )}
      {clamps !== undefined && (
        <label className="check">
          <input
            type="checkbox"
            checked={clamps.spring === true}
            onChange={(event) => set(withSpring(clamps, event.target.checked))}
          />
          {name}: held by a spring alone, without a screw
        </label>
      )}
    </div>
  );
}

function withSpring({ spring: _old, ...clamps }: HoseClamps, spring: boolean): HoseClamps {
  return spring ? { ...clamps, spring } : clamps;
}

interface ClampLengthProps {
  readonly label: string;
  readonly of: 'fromHoseEndMm' | 'bandMm';
  readonly clamps: HoseClamps;
  readonly set: (to: HoseClamps) => void;
}

function ClampLength({ label, of, clamps, set }: ClampLengthProps) {
  const { [of]: mm, ...others } = clamps;
  return (
    <MaybeLengthField
      label={label}
      hint="not said"
      mm={mm}
      mayBeZero={of === 'fromHoseEndMm'}
      onSet={(to) => set(to === undefined ? others : { ...others, [of]: to })}
    />
  );
}
