import type { Bay } from '../../../shared/document/project/schema.ts';
import { useBench, useDocument } from '../../state/useBench.ts';
import { NumberField } from '../../widgets/NumberField.tsx';
import { TemperatureField } from '../ServiceField.tsx';

type Air = Pick<Bay, 'airTemperatureC' | 'airSpeedMPerS' | 'soakAirTemperatureC'>;

/** What the fields begin with: what is assumed of a bay that states nothing. */
const BEGIN = { airTemperatureC: 60, airSpeedMPerS: 1, soakAirTemperatureC: 80 } as const;
const HOTTEST_C = 200;

/** The air round the hoses, which carries off what hot parts radiate onto them: stated, or assumed with a wide band. */
export function BayAir() {
  const { document } = useBench();
  const bay = useDocument(({ open }) => open?.history.present.bay);
  if (bay === undefined) return null;
  const stated = Object.keys(BEGIN).some((key) => bay[key as keyof Air] !== undefined);
  const change = (air: Air, join = true): void =>
    document.edit("the bay's air", (project) => ({ ...project, bay: { ...project.bay, ...air } }), join);
  const assume = (): void =>
    document.edit("the bay's air", (project) => {
      const { airTemperatureC: _c, airSpeedMPerS: _v, soakAirTemperatureC: _s, ...bare } = project.bay;
      return { ...project, bay: bare };
    });
  return (
    <section className="square-up" aria-label="Air in the bay">
      <h3>Air in the bay</h3>
      <p className="teach">Temperatures along the hoses rest on it. Measured beats assumed, and narrows their band.</p>
      <label className="check">
        <input
          type="checkbox"
          checked={!stated}
          onChange={(event) => (event.target.checked ? assume() : change(BEGIN, false))}
        />
        Not known: assume 60 °C at 1 m/s, and 80 °C once it stands
      </label>
      {stated && (
        <>
          <TemperatureField
            label="Air, running"
            highC={HOTTEST_C}
            value={bay.airTemperatureC ?? BEGIN.airTemperatureC}
            onSet={(airTemperatureC) => change({ airTemperatureC })}
          />
          <NumberField
            label="Its speed across the hoses"
            unit="m/s"
            value={bay.airSpeedMPerS ?? BEGIN.airSpeedMPerS}
            low={0}
            high={60}
            step={0.5}
            decimals={1}
            onSet={(airSpeedMPerS) => change({ airSpeedMPerS })}
          />
          <TemperatureField
            label="Air in hot soak"
            highC={HOTTEST_C}
            value={bay.soakAirTemperatureC ?? BEGIN.soakAirTemperatureC}
            onSet={(soakAirTemperatureC) => change({ soakAirTemperatureC })}
          />
        </>
      )}
    </section>
  );
}
