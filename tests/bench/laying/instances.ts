import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { UNWATCHED } from '../../../shared/base/watch.ts';
import { buildRunField } from '../../../shared/solve/bay/runField.ts';
import { buildTubeField } from '../../../shared/solve/bay/tubeField.ts';
import { withBounds } from '../../../shared/solve/search/changedField.ts';
import type { Effort } from '../../../shared/solve/search/problem.ts';
import { searchWays } from '../../../shared/solve/search/searchWays.ts';
import { hasBay, openBay, type PlanningBay } from '../planningBays.ts';
import { pushTimes, quantile, rows, timed } from './rows.ts';

interface Instance {
  readonly name: string;
  readonly start: { p: [number, number, number]; t: [number, number, number] };
  readonly goal: { p: [number, number, number]; t: [number, number, number] };
  readonly minRadius: number;
  readonly tubeRadius: number;
  readonly clearance: number;
  readonly bounds: readonly [[number, number, number], [number, number, number]];
  readonly bestKnownLength: number;
}

const SEEDS = 20;
const instanceFile = path.resolve('../shared/reference/planning-instances.json');

function measureInstance(instance: Instance, bay: PlanningBay, effort: Effort): void {
  if (!hasBay(bay)) {
    process.stdout.write(`${instance.name}: left out, ${bay} was not made\n`);
    return;
  }
  const index = openBay(bay);
  const box = { min: instance.bounds[0], max: instance.bounds[1] };
  const found: { lengthMm: number; ms: number }[] = [];
  for (let seed = 1; seed <= SEEDS; seed++) {
    let lengthMm = Number.POSITIVE_INFINITY;
    const ms = timed(() => {
      const keeps = { skinMm: new Map([['plain', instance.tubeRadius + instance.clearance]]), tubeMm: 0, held: [] };
      const field = withBounds(buildRunField({ ...index, bounds: box }, buildTubeField([]), keeps), box);
      const from = { kind: 'held', pose: { point: instance.start.p, direction: instance.start.t } } as const;
      const to = { kind: 'held', pose: { point: instance.goal.p, direction: instance.goal.t } } as const;
      const asked = { from, to, minRadiusMm: instance.minRadius, field, ways: 1, seed, effort };
      lengthMm = searchWays(asked, UNWATCHED).ways[0]?.lengthMm ?? lengthMm;
    });
    found.push({ lengthMm, ms });
  }
  const lengths = found.map((f) => f.lengthMm);
  const times = found.map((f) => f.ms);
  const group = `${instance.name}, ${effort}, ${SEEDS} seeds`;
  rows.push([group, 'length, median', quantile(lengths, 0.5), 'mm']);
  rows.push([group, 'length, longest', Math.max(...lengths), 'mm']);
  rows.push([group, 'longest over best known', Math.max(...lengths) / instance.bestKnownLength, 'ratio']);
  pushTimes(group, times);
}

/** Lengths found against the best known, and in what time. */
export function measureInstances(): void {
  if (existsSync(instanceFile)) {
    const instances = (JSON.parse(readFileSync(instanceFile, 'utf8')) as { instances: Instance[] }).instances;
    for (const instance of instances)
      for (const effort of ['quick', 'normal'] as const)
        measureInstance(instance, instance.name === 'P1' ? 'bay-1e6' : 'motorBike', effort);
  }
}
