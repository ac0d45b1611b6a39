import type { Adapter, End, Hose } from '../parts/schema.ts';
import type { Run } from '../project/schema.ts';

/** What a part of an assembly bears, and where that comes from. */
export interface RatedPart {
  /** in words: the hose; END A; the adapter npt-elbow at END B */
  readonly part: string;
  readonly maxPressureKpa: number;
  readonly source: string;
  /** of a hose whose table goes by temperature: how the figure was read */
  readonly note?: string;
}

/** What the hose itself is called among the parts of an assembly. */
export const HOSE = 'the hose';

/**
 * What a hose may work at, kPa, at the temperature of its fluid: between the points of its maker's table in a straight line;
 * below the first its figure, beyond the last none is known and the last is taken, which the note says. Without a table its one
 * rating. temperatureC: of the fluid.
 */
export function hosePressureKpa(hose: Hose, temperatureC: number): { readonly kpa: number; readonly note?: string } {
  const table = hose.pressureByTemperature;
  const last = table?.[table.length - 1];
  if (table === undefined || last === undefined) return { kpa: hose.maxPressureKpa };
  const above = table.findIndex(([celsius]) => celsius >= temperatureC);
  if (above < 0)
    return { kpa: last[1], note: `beyond the table, which ends at ${last[0]} deg C: the last figure is taken` };
  const [high, highKpa] = table[above] as (typeof table)[number];
  const [low, lowKpa] = table[Math.max(0, above - 1)] as (typeof table)[number];
  const share = high > low ? (temperatureC - low) / (high - low) : 1;
  return { kpa: lowKpa + share * (highKpa - lowKpa), note: `at ${temperatureC} deg C` };
}

/** What of a run says what its parts bear. */
export interface Assembly {
  readonly run: Pick<Run, 'service'>;
  readonly hose: Hose;
  readonly a: AssembledEnd;
  readonly b: AssembledEnd;
}

export interface AssembledEnd {
  readonly end: End;
  readonly stack?: { readonly adapters: readonly { readonly adapter: Adapter }[] } | undefined;
}

/** Every part of an assembly whose rating is known, the weakest first. */
export function ratedParts({ hose, a, b, run }: Assembly): readonly RatedPart[] {
  const { kpa, note } = hosePressureKpa(hose, run.service.temperatureC);
  const parts = [
    { part: HOSE, maxPressureKpa: kpa, source: hose.source, ...(note === undefined ? {} : { note }) },
    ...endParts('END A', a),
    ...endParts('END B', b),
  ];
  return parts.sort((p, q) => p.maxPressureKpa - q.maxPressureKpa);
}

function endParts(name: string, { end, stack }: AssembledEnd): RatedPart[] {
  const of = (part: string, maxPressureKpa: number | undefined, source: string): RatedPart[] =>
    maxPressureKpa === undefined ? [] : [{ part, maxPressureKpa, source }];
  return [
    ...of(name, end.maxPressureKpa, end.source),
    ...(stack?.adapters ?? []).flatMap(({ adapter }) =>
      of(`the adapter ${adapter.name} at ${name}`, adapter.maxPressureKpa, adapter.source),
    ),
  ];
}
