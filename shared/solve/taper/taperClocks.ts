import type { Taper, TaperPose } from '../../document/lay/schema.ts';
import type { ResolvedRun } from '../../document/project/resolve.ts';

/** deg. Clocks of one range are looked at no further apart. */
export const TAPER_STEP_DEG = 15;
/** Poses of several tapers together that are laid at most; more are parted by looking at their limits and middles alone. */
const MOST_POSES = 49;

/** A taper thread of a run: between which clocks it comes tight. */
export interface TaperRange {
  readonly end: 'a' | 'b';
  /** place in the stack of that port */
  readonly place: number;
  readonly adapter: string;
  readonly fromDeg: number;
  readonly toDeg: number;
  /** the middle, for which the hose is laid */
  readonly laidAtDeg: number;
}

/** The taper threads of a run's ports whose clock is a range of any width, END A's first, from the part outwards. */
export function taperRanges(run: ResolvedRun): TaperRange[] {
  return (['a', 'b'] as const).flatMap((end) =>
    (run[end].stack?.adapters ?? []).flatMap(({ adapter, use }, place): TaperRange[] => {
      const [fromDeg, toDeg] = use.clockRangeDeg ?? [0, 0];
      if (toDeg <= fromDeg) return [];
      return [{ end, place, adapter: adapter.id, fromDeg, toDeg, laidAtDeg: (fromDeg + toDeg) / 2 }];
    }),
  );
}

/**
 * The clocks at which a run with taper threads is laid, by range, deg: of each range both limits and evenly spaced ones in
 * between, TAPER_STEP_DEG apart at most; of several ranges every combination. Where those are more than 49 it is the limits
 * and the middle of each, and where those are still more, each taper goes through its clocks while the others stand in the middle.
 */
export function taperClocks(ranges: readonly TaperRange[]): number[][] {
  if (ranges.length === 0) return [];
  const fine = ranges.map(clocksOfRange);
  const coarse = ranges.map(({ fromDeg, toDeg, laidAtDeg }) => [fromDeg, laidAtDeg, toDeg]);
  const choice = [fine, coarse].find((levels) => levels.reduce((n, list) => n * list.length, 1) <= MOST_POSES);
  if (choice !== undefined) return combinations(choice);
  return fine.flatMap((clocks, i) => clocks.map((clock) => ranges.map((r, k) => (k === i ? clock : r.laidAtDeg))));
}

function clocksOfRange({ fromDeg, toDeg }: TaperRange): number[] {
  const steps = Math.ceil((toDeg - fromDeg) / TAPER_STEP_DEG);
  return Array.from({ length: steps + 1 }, (_, i) => fromDeg + ((toDeg - fromDeg) * i) / steps);
}

function combinations(levels: readonly (readonly number[])[]): number[][] {
  return levels.reduce<number[][]>((all, list) => all.flatMap((some) => list.map((one) => [...some, one])), [[]]);
}

/** Clocks by end and place in its stack, for `seatedPort`. */
export function clocksOfStack(
  ranges: readonly TaperRange[],
  clocksDeg: readonly number[],
  end: 'a' | 'b',
): (number | undefined)[] {
  const clocks: (number | undefined)[] = [];
  ranges.forEach((range, i) => {
    if (range.end === end) clocks[range.place] = clocksDeg[i];
  });
  return clocks;
}

/** A pose in words and numbers. */
export function namedPose(
  ranges: readonly TaperRange[],
  clocksDeg: readonly number[],
): Pick<TaperPose, 'name' | 'clocks'> {
  const clocks = ranges.map(({ end, adapter }, i) => ({ end, adapter, clockDeg: clocksDeg[i] as number }));
  const words = clocks.map((c) => `${c.adapter} at END ${c.end.toUpperCase()} at ${Math.round(c.clockDeg)} degrees`);
  return { name: words.join('; '), clocks };
}

/** The ranges, as the report tells them. */
export function toldRanges(ranges: readonly TaperRange[]): Taper['ranges'] {
  return ranges.map(({ place: _, ...range }) => range);
}
