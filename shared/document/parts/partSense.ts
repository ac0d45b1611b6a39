import type { z } from 'zod';
import type { Problem } from '../../base/result.ts';
import { END_AGREES_MM } from '../../base/tolerances.ts';
import type { PartKind, ROW_SCHEMAS } from './columns.ts';
import { completeEnd } from './completeEnd.ts';
import { cutOffMm, dropMm } from './cutOff.ts';
import type { Adapter, Clamp, EndRow, Hose, Sleeve } from './schema.ts';

/** What a row's figures say about each other: faults that no single cell shows. Paths are keys of the row. */
export function partSense(kind: PartKind, row: z.infer<(typeof ROW_SCHEMAS)[PartKind]>): Problem[] {
  if (kind === 'hoses') return hoseSense(row as Hose);
  if (kind === 'sleeves') return walls(row as Sleeve);
  if (kind === 'ends') return endSense(row as EndRow);
  if (kind === 'adapters') return adapterSense(row as Adapter);
  return kind === 'clamps' ? clampSense(row as Clamp) : [];
}

function hoseSense(hose: Hose): Problem[] {
  return [
    ...walls(hose),
    ...when(
      hose.minTemperatureC >= hose.maxTemperatureC,
      'maxTemperatureC',
      `expected above min_temperature_c, ${hose.minTemperatureC}`,
      hose.maxTemperatureC,
    ),
    ...rising(hose.pressureByTemperature ?? []),
  ];
}

function rising(pairs: readonly (readonly [number, number])[]): Problem[] {
  return pairs.flatMap(([temperatureC], i) => {
    const before = pairs[i - 1];
    return when(
      before !== undefined && temperatureC <= before[0],
      'pressureByTemperature',
      'expected temperatures that rise from pair to pair',
      temperatureC,
    );
  });
}

function walls(tube: { insideDiameterMm: number; outsideDiameterMm: number }): Problem[] {
  return when(
    tube.outsideDiameterMm <= tube.insideDiameterMm,
    'outsideDiameterMm',
    `expected above inside_diameter_mm, ${tube.insideDiameterMm}`,
    tube.outsideDiameterMm,
  );
}

function endSense(row: EndRow): Problem[] {
  const end = completeEnd(row);
  if (end === undefined) return [{ path: 'seatToBendMm', message: missingLengths(row) }];
  return [
    ...when(
      end.bendAngleDeg < 180 && end.seatToBendMm + end.bendToShoulderMm <= 0,
      'bendToShoulderMm',
      'seat_to_bend_mm and bend_to_shoulder_mm are both 0: measure the end',
      end.bendToShoulderMm,
    ),
    ...when(
      end.bendAngleDeg === 180 && !(end.dropMm !== undefined && end.dropMm > 0),
      'dropMm',
      'an end bent 180 degrees needs its drop_mm, from axis to axis',
      end.dropMm ?? 0,
    ),
    ...disagreement('cutOffMm', row.cutOffMm, cutOffMm(end)),
    ...disagreement('dropMm', row.dropMm, dropMm(end)),
    ...when(
      (end.crimpFromMm ?? 0) > (end.crimpToMm ?? Number.POSITIVE_INFINITY),
      'crimpToMm',
      `expected at least crimp_from_mm, ${end.crimpFromMm}`,
      end.crimpToMm ?? 0,
    ),
    ...rangeSense(row),
  ];
}

function missingLengths(row: EndRow): string {
  return row.bendAngleDeg === 180
    ? 'an end bent 180 degrees needs seat_to_bend_mm, bend_to_shoulder_mm and drop_mm'
    : `expected seat_to_bend_mm and bend_to_shoulder_mm, or cut_off_mm${row.bendAngleDeg > 0 ? ' and drop_mm' : ''}`;
}

function disagreement(path: 'cutOffMm' | 'dropMm', stated: number | undefined, followsMm: number): Problem[] {
  return when(
    stated !== undefined && Math.abs(stated - followsMm) > END_AGREES_MM,
    path,
    `does not agree with the lengths and the angle, from which ${followsMm.toFixed(1)} follows: measure again`,
    stated ?? 0,
  );
}

function rangeSense(row: EndRow): Problem[] {
  if (row.turning !== 'range') return [];
  const { turnFromDeg: from, turnToDeg: to } = row;
  if (from === undefined || to === undefined)
    return [{ path: 'turnFromDeg', message: 'an end that turns in a range needs turn_from_deg and turn_to_deg' }];
  return when(to < from || to - from > 360, 'turnToDeg', `expected from turn_from_deg, ${from}, to one turn above`, to);
}

function adapterSense(adapter: Adapter): Problem[] {
  return [
    ...when(
      adapter.portToBendMm + adapter.bendToSeatMm <= 0,
      'bendToSeatMm',
      'port_to_bend_mm and bend_to_seat_mm are both 0: measure the adapter',
      adapter.bendToSeatMm,
    ),
    ...(adapter.form === 'tee' && adapter.branchToSeatMm === undefined
      ? [{ path: 'branchToSeatMm', message: 'a tee needs branch_to_seat_mm' }]
      : []),
  ];
}

function clampSense(clamp: Clamp): Problem[] {
  return when(
    clamp.holdsToMm < clamp.holdsFromMm,
    'holdsToMm',
    `expected at least holds_from_mm, ${clamp.holdsFromMm}`,
    clamp.holdsToMm,
  );
}

function when(broken: boolean, path: string, message: string, value: number): Problem[] {
  return broken ? [{ path, message, got: String(value) }] : [];
}
