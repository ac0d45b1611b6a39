import type { Problem } from '../../base/result.ts';
import type { PartKind, RowOf } from './columns.ts';
import type { End, Hose, Sleeve } from './schema.ts';

/** What a row's figures say about each other: faults that no single cell shows. Paths are keys of the row. */
export function partSense(kind: PartKind, row: RowOf[PartKind]): Problem[] {
  if (kind === 'hoses') return hoseSense(row as Hose);
  return kind === 'sleeves' ? walls(row as Sleeve) : endSense(row as End);
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
  ];
}

function walls(tube: { insideDiameterMm: number; outsideDiameterMm: number }): Problem[] {
  return when(
    tube.outsideDiameterMm <= tube.insideDiameterMm,
    'outsideDiameterMm',
    `expected above inside_diameter_mm, ${tube.insideDiameterMm}`,
    tube.outsideDiameterMm,
  );
}

function endSense(end: End): Problem[] {
  return when(
    end.seatToBendMm + end.bendToShoulderMm <= 0,
    'bendToShoulderMm',
    'seat_to_bend_mm and bend_to_shoulder_mm are both 0: measure the end',
    end.bendToShoulderMm,
  );
}

function when(broken: boolean, path: string, message: string, value: number): Problem[] {
  return broken ? [{ path, message, got: String(value) }] : [];
}
