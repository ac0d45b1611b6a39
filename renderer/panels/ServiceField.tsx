import { fahrenheitToCelsius, KPA_PER_PSI, psiToKpa } from '../../shared/base/units.ts';
import { readPressure, readTemperature } from '../../shared/document/parts/readQuantity.ts';
import { useSession } from '../state/useBench.ts';
import { NumberField } from '../widgets/NumberField.tsx';

interface ServiceFieldProps {
  readonly value: number | null;
  readonly onSet: (value: number) => void;
  /** takes it away when the field is emptied; absent = it has to be stated */
  readonly onClear?: () => void;
}

/** kPa; a suction is stated down to a full vacuum, and nothing in a bay is above this. */
const PRESSURES_KPA = { low: -100, high: 50_000 };
const LEAST_C = -60;

interface PressureFieldProps extends ServiceFieldProps {
  readonly label?: string;
  /** of kPa that are shown; a low pressure is told to a tenth */
  readonly decimals?: number;
}

/** A pressure above the bay's air, the working one unless said otherwise, in kPa or psi as the window shows lengths; the project keeps kPa. */
export function PressureField({ value, onSet, onClear, label = 'Working pressure', decimals = 0 }: PressureFieldProps) {
  const clear = onClear === undefined ? {} : { onClear };
  const psi = useSession((session) => session.units) === 'inch';
  return psi ? (
    <NumberField
      label={label}
      unit="psi"
      value={value === null ? null : value / KPA_PER_PSI}
      low={Math.ceil(PRESSURES_KPA.low / KPA_PER_PSI)}
      high={Math.floor(PRESSURES_KPA.high / KPA_PER_PSI)}
      step={1}
      decimals={1}
      other={{ words: 'or kPa or bar by name', read: (text) => readPressure(text, 'psi') }}
      onSet={(stated) => onSet(Number(psiToKpa(stated).toFixed(2)))}
      {...clear}
    />
  ) : (
    <NumberField
      label={label}
      unit="kPa"
      value={value}
      {...PRESSURES_KPA}
      step={10}
      decimals={decimals}
      other={{ words: 'or psi or bar by name', read: (text) => readPressure(text, 'kPa') }}
      onSet={(stated) => onSet(Number(stated.toFixed(2)))}
      {...clear}
    />
  );
}

interface TemperatureFieldProps extends ServiceFieldProps {
  readonly label?: string;
  readonly highC?: number;
}

/** A temperature, of what runs in the hose unless said otherwise, in degrees C or F; the project keeps C. */
export function TemperatureField({ value, onSet, label = 'Temperature', highC = 400 }: TemperatureFieldProps) {
  const fahrenheit = useSession((session) => session.units) === 'inch';
  return fahrenheit ? (
    <NumberField
      label={label}
      unit="°F"
      value={value === null ? null : (value * 9) / 5 + 32}
      low={(LEAST_C * 9) / 5 + 32}
      high={(highC * 9) / 5 + 32}
      step={5}
      decimals={0}
      other={{ words: 'or °C by name', read: (text) => readTemperature(text, '°F') }}
      onSet={(stated) => onSet(Number(fahrenheitToCelsius(stated).toFixed(1)))}
    />
  ) : (
    <NumberField
      label={label}
      unit="°C"
      value={value}
      low={LEAST_C}
      high={highC}
      step={5}
      decimals={0}
      other={{ words: 'or °F by name', read: (text) => readTemperature(text, '°C') }}
      onSet={(stated) => onSet(Number(stated.toFixed(1)))}
    />
  );
}
