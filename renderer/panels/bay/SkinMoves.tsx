import { triple } from '../../../shared/base/vec3.ts';
import type { SkinSweep } from '../../../shared/document/project/schema.ts';
import { Choice } from '../../widgets/Choice.tsx';
import { NumberField } from '../../widgets/NumberField.tsx';
import { DirectionField, PointField } from '../LengthField.tsx';

const WAYS = [
  { value: 'still', label: 'Not stated: as scanned' },
  { value: 'whole', label: 'Turns all round' },
  { value: 'turn', label: 'Turns to and fro' },
  { value: 'stroke', label: 'Strokes to and fro' },
] as const;
type Way = (typeof WAYS)[number]['value'];

/** What a way begins with, to be changed then. */
const BEGIN: Readonly<Record<Way, SkinSweep | null>> = {
  still: null,
  whole: { kind: 'turn', point: [0, 0, 0], axis: [1, 0, 0] },
  turn: { kind: 'turn', point: [0, 0, 0], axis: [1, 0, 0], fromDeg: 0, toDeg: 90 },
  stroke: { kind: 'stroke', direction: [0, 0, 1], fromMm: 0, toMm: 50 },
};

function wayOf(sweep: SkinSweep | undefined): Way {
  if (sweep === undefined) return 'still';
  if (sweep.kind === 'stroke') return 'stroke';
  return sweep.fromDeg === undefined ? 'whole' : 'turn';
}

interface SkinMovesProps {
  readonly sweep: SkinSweep | undefined;
  readonly onSet: (sweep: SkinSweep | null, join: boolean) => void;
}

/** How the parts of a moving skin move; hoses keep clear of all they sweep. */
export function SkinMoves({ sweep, onSet }: SkinMovesProps) {
  return (
    <>
      <Choice
        label="How it moves"
        value={wayOf(sweep)}
        options={WAYS}
        onChoose={(way) => onSet(BEGIN[way as Way], false)}
      />
      {sweep?.kind === 'turn' && (
        <>
          <PointField
            label="On its axis"
            point={sweep.point}
            onSet={(point) => onSet({ ...sweep, point: triple(point) }, true)}
          />
          <DirectionField
            label="Axis"
            direction={sweep.axis}
            onSet={(axis) => onSet({ ...sweep, axis: triple(axis) }, true)}
          />
        </>
      )}
      {sweep?.kind === 'turn' && sweep.fromDeg !== undefined && sweep.toDeg !== undefined && (
        <Range
          unit="°"
          most={360}
          from={sweep.fromDeg}
          to={sweep.toDeg}
          onSet={(fromDeg, toDeg) => onSet({ ...sweep, fromDeg, toDeg }, true)}
        />
      )}
      {sweep?.kind === 'stroke' && (
        <>
          <DirectionField
            label="Along"
            direction={sweep.direction}
            onSet={(direction) => onSet({ ...sweep, direction: triple(direction) }, true)}
          />
          <Range
            unit="mm"
            most={1000}
            from={sweep.fromMm}
            to={sweep.toMm}
            onSet={(fromMm, toMm) => onSet({ ...sweep, fromMm, toMm }, true)}
          />
        </>
      )}
    </>
  );
}

interface RangeProps {
  readonly unit: string;
  readonly most: number;
  readonly from: number;
  readonly to: number;
  readonly onSet: (from: number, to: number) => void;
}

/** From where to where, 0 as scanned; the one stays above the other. */
function Range({ unit, most, from, to, onSet }: RangeProps) {
  return (
    <>
      <NumberField
        label="From"
        unit={unit}
        value={from}
        low={-most}
        high={to - 1}
        step={1}
        decimals={1}
        onSet={(low) => onSet(low, to)}
      />
      <NumberField
        label="To"
        unit={unit}
        value={to}
        low={from + 1}
        high={most}
        step={1}
        decimals={1}
        onSet={(high) => onSet(from, high)}
      />
    </>
  );
}
