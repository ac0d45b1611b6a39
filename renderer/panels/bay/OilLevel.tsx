import {
  type Attitude,
  type Bay,
  MOST_ACCELERATION_G,
  MOST_GRADE_DEG,
  type Project,
} from '../../../shared/document/project/schema.ts';
import { useBench, useDocument } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { NumberField } from '../../widgets/NumberField.tsx';
import { TextField } from '../../widgets/TextField.tsx';
import { PointField } from '../LengthField.tsx';

const LEVEL = { x: 0, y: 0 } as const;

/** Where the oil that drains return to stands, and how the bay leans or is driven beside level and at rest. */
export function OilLevel() {
  const { document } = useBench();
  const bay = useDocument(({ open }) => open?.history.present.bay);
  if (bay === undefined) return null;
  const { oilLevel, attitudes = [] } = bay;
  const set = (to: Bay['oilLevel'], join = false): void =>
    document.edit('oil level', (project) => withOilLevel(project, to), join);
  const lean = (to: readonly Attitude[], join = false): void =>
    document.edit('how the bay leans', (project) => withAttitudes(project, to), join);
  return (
    <section className="square-up" aria-label="Oil level">
      <h3>Oil level</h3>
      <p className="teach">
        A turbo drain has to come in above it, also where braking, a bend or a slope tilts it. It turns about the middle
        of the sump.
      </p>
      <label className="check">
        <input
          type="checkbox"
          checked={oilLevel === undefined}
          onChange={(event) => set(event.target.checked ? undefined : [0, 0, 0])}
        />
        Not known
      </label>
      {oilLevel !== undefined && (
        <PointField label="Middle of the oil’s surface" point={oilLevel} onSet={([x, y, z]) => set([x, y, z], true)} />
      )}
      {attitudes.map((attitude, at) => (
        <AttitudeFields
          // biome-ignore lint/suspicious/noArrayIndexKey: attitudes have no id, and a name may be typed twice
          key={at}
          attitude={attitude}
          onSet={(now) =>
            lean(
              attitudes.map((a, i) => (i === at ? now : a)),
              true,
            )
          }
          onRemove={() => lean(attitudes.filter((_, i) => i !== at))}
        />
      ))}
      <div className="support-buttons">
        <Button
          onPress={() =>
            lean([...attitudes, { name: `attitude ${attitudes.length + 1}`, gradeDeg: LEVEL, accelerationG: LEVEL }])
          }
        >
          Add how it leans or is driven
        </Button>
      </div>
    </section>
  );
}

interface AttitudeFieldsProps {
  readonly attitude: Attitude;
  readonly onSet: (attitude: Attitude) => void;
  readonly onRemove: () => void;
}

function AttitudeFields({ attitude, onSet, onRemove }: AttitudeFieldsProps) {
  return (
    <fieldset className="support-fields" aria-label={attitude.name}>
      <TextField label="Called" value={attitude.name} onSet={(name) => onSet({ ...attitude, name })} />
      {(['x', 'y'] as const).map((axis) => (
        <div className="axis-pair" key={axis}>
          <NumberField
            label={`${axis.toUpperCase()} axis uphill by`}
            unit="°"
            value={attitude.gradeDeg[axis]}
            low={-MOST_GRADE_DEG}
            high={MOST_GRADE_DEG}
            step={1}
            decimals={1}
            onSet={(deg) => onSet({ ...attitude, gradeDeg: { ...attitude.gradeDeg, [axis]: deg } })}
          />
          <NumberField
            label={`Accelerates along ${axis.toUpperCase()}`}
            unit="g"
            value={attitude.accelerationG[axis]}
            low={-MOST_ACCELERATION_G}
            high={MOST_ACCELERATION_G}
            step={0.1}
            decimals={2}
            onSet={(g) => onSet({ ...attitude, accelerationG: { ...attitude.accelerationG, [axis]: g } })}
          />
        </div>
      ))}
      <div className="support-buttons">
        <Button name={`Remove ${attitude.name}`} onPress={onRemove}>
          Remove
        </Button>
      </div>
    </fieldset>
  );
}

function withOilLevel(project: Project, oilLevel: Bay['oilLevel']): Project {
  const { oilLevel: _, ...bay } = project.bay;
  return { ...project, bay: oilLevel === undefined ? bay : { ...bay, oilLevel } };
}

function withAttitudes(project: Project, attitudes: readonly Attitude[]): Project {
  const { attitudes: _, ...bay } = project.bay;
  return { ...project, bay: attitudes.length === 0 ? bay : { ...bay, attitudes: [...attitudes] } };
}
