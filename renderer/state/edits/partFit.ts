import { fluidCoreCell } from '../../../shared/document/materials/fluidCore.ts';
import type { End, Hose } from '../../../shared/document/parts/schema.ts';
import type { Fluid, Port } from '../../../shared/document/project/schema.ts';

/** What a run asks of a hose; `null` and absent = not stated yet, and then nothing is held against it. */
export interface AskedOfHose {
  readonly ports: readonly (Port | undefined)[];
  readonly fluid?: Fluid;
  readonly pressureKpa?: number | null;
  readonly temperatureC?: number | null;
}

/** One thing that is against a hose, with the figure that it goes by. */
export type HoseMisfit =
  | { readonly kind: 'size'; readonly dash: number; readonly portDash: number }
  | { readonly kind: 'fluid'; readonly fluid: Fluid; readonly why: string }
  | { readonly kind: 'too-hot'; readonly mostC: number }
  | { readonly kind: 'too-cold'; readonly leastC: number }
  | { readonly kind: 'pressure'; readonly mostKpa: number };

/**
 * What is against a hose on a run; empty = it fits as far as its table says. The checks of a laid run judge it finely,
 * derated by temperature and with sources: this only sorts a list.
 */
export function hoseMisfits(hose: Hose, asked: AskedOfHose): readonly HoseMisfit[] {
  const { dash, core, minTemperatureC: leastC, maxTemperatureC: mostC, maxPressureKpa: mostKpa } = hose;
  const { ports, fluid, pressureKpa, temperatureC } = asked;
  const otherSizes = new Set(ports.flatMap((port) => (port === undefined || port.dash === dash ? [] : [port.dash])));
  const misfits = [...otherSizes].map((portDash): HoseMisfit => ({ kind: 'size', dash, portDash }));
  const cell = fluid === undefined ? undefined : fluidCoreCell(core, fluid);
  if (fluid !== undefined && cell?.grade === 0) misfits.push({ kind: 'fluid', fluid, why: cell.why });
  if (typeof temperatureC === 'number' && temperatureC > mostC) misfits.push({ kind: 'too-hot', mostC });
  if (typeof temperatureC === 'number' && temperatureC < leastC) misfits.push({ kind: 'too-cold', leastC });
  if (typeof pressureKpa === 'number' && pressureKpa > mostKpa) misfits.push({ kind: 'pressure', mostKpa });
  return misfits;
}

/** Whether an end seats on a port as it is, without an adapter. */
export function seatsOn(end: End, port: Port | undefined): boolean {
  return end.seat === port?.seat && end.dash === port.dash;
}
