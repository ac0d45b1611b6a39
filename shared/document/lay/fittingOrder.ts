import type { Lay } from './schema.ts';

/** In which order hoses are fitted. */
export interface FittingOrder {
  /** runs, first to be tightened first; those whose order is free stand as they do in the report */
  readonly order: readonly string[];
  /** for each run that has to wait: the runs that go on before it */
  readonly after: Readonly<Record<string, readonly string[]>>;
  /** runs of which each would have to be tightened before the other; their order in `order` is not to be trusted */
  readonly stuck: readonly (readonly string[])[];
}

/**
 * The order of fitting that the lays ask for: a run is tightened before every run named in its `hands.before`. The first
 * run of the report that waits for nobody comes first (Kahn 1962, kept in order). Where all that are left wait, the runs
 * of the circle are told together (strongly connected runs) and the first of them goes on as it stands.
 */
export function fittingOrder({ lays }: { readonly lays: readonly Pick<Lay, 'run' | 'hands'>[] }): FittingOrder {
  const runs = lays.map((lay) => lay.run);
  const follows = new Map(lays.map((lay) => [lay.run, (lay.hands?.before ?? []).filter((id) => runs.includes(id))]));
  const waitsFor = new Map(runs.map((run) => [run, runs.filter((other) => follows.get(other)?.includes(run))]));
  const order: string[] = [];
  const left = [...runs];
  while (left.length > 0) {
    const free = left.findIndex((run) => waitsFor.get(run)?.every((other) => order.includes(other)));
    order.push(...left.splice(Math.max(free, 0), 1));
  }
  const after = Object.fromEntries([...waitsFor].filter(([, others]) => others.length > 0));
  return { order, after, stuck: circles(runs, follows) };
}

/** Groups of two or more runs that reach each other, in the order of the runs. */
function circles(runs: readonly string[], follows: ReadonlyMap<string, readonly string[]>): string[][] {
  const reach = new Map(runs.map((run) => [run, reached(run, follows)]));
  const inCircle = runs.filter((run) => reach.get(run)?.has(run));
  const groups: string[][] = [];
  for (const run of inCircle) {
    if (groups.some((group) => group.includes(run))) continue;
    groups.push(inCircle.filter((other) => reach.get(run)?.has(other) && reach.get(other)?.has(run)));
  }
  return groups;
}

function reached(from: string, follows: ReadonlyMap<string, readonly string[]>): Set<string> {
  const seen = new Set<string>();
  const pending = [...(follows.get(from) ?? [])];
  for (let run = pending.pop(); run !== undefined; run = pending.pop()) {
    if (seen.has(run)) continue;
    seen.add(run);
    pending.push(...(follows.get(run) ?? []));
  }
  return seen;
}
