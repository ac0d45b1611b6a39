import { bench, describe } from 'vitest';
import { CARVED_KINDS, type CarvedKind, carvedBay } from '../arbitraries/carvedBays.ts';
import { searchCarved } from '../arbitraries/carvedSearch.ts';
import { keep, REFERENCE, reference } from './reference.ts';

/**
 * Instances that can be solved by construction: how many of 300 the search solves, by kind, and what one of them takes, the
 * dearest tenth among them, beside the reference piece. CARVED_BAYS=n looks at the first n only.
 */
const COUNT = Number(process.env.CARVED_BAYS ?? 300);

interface Tried {
  readonly seed: number;
  readonly found: boolean;
  readonly ms: number;
}

const tried = new Map<CarvedKind, Tried[]>(CARVED_KINDS.map((kind) => [kind, []]));
for (let seed = 1; seed <= COUNT; seed++) {
  const bay = carvedBay(seed);
  const startedAt = performance.now();
  const found = searchCarved(bay).ways.length > 0;
  tried.get(bay.kind)!.push({ seed, found, ms: performance.now() - startedAt });
}

/** The seed that took as long as the given share of its kind took at most. */
function seedAt(kind: CarvedKind, share: number): number {
  const sorted = [...tried.get(kind)!].sort((a, b) => a.ms - b.ms);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!.seed;
}

const ONCE = { iterations: 3, time: 0, warmupIterations: 0, warmupTime: 0 };

describe('bays carved round a hose', () => {
  bench(REFERENCE, () => keep(reference()));
  for (const kind of CARVED_KINDS) {
    const all = tried.get(kind)!;
    const name = `${kind}, ${all.filter((t) => t.found).length} of ${all.length} found`;
    for (const [word, share] of [
      ['median', 0.5],
      ['nine in ten', 0.9],
    ] as const) {
      const bay = carvedBay(seedAt(kind, share));
      bench(`${name}: ${word}`, () => keep(searchCarved(bay).ways.length), ONCE);
    }
  }
});
