import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../shared/base/random.ts';
import { distance } from '../../../../shared/base/vec3.ts';
import { connectWithShortTurns } from '../../../../shared/geometry/arcLineConnector.ts';
import { pathEnd, pathLengthMm, tightestRadiusMm } from '../../../../shared/geometry/arcLinePath.ts';
import { redivideChain } from '../../../../shared/geometry/freeShortest/redivideChain.ts';
import { shortestFreePath } from '../../../../shared/geometry/freeShortest/shortestFreePath.ts';
import { ChainTightener } from '../../../../shared/geometry/freeShortest/tightenChain.ts';
import type { TurnChain } from '../../../../shared/geometry/freeShortest/turnChain.ts';
import { type PosePair, posePairs } from '../../../arbitraries/posePairs.ts';
import { seenFromStart, shortestExtremal } from '../../../oracles/shortestExtremal.ts';

const FILE = path.resolve(import.meta.dirname, '../../../fixtures/freePairs/reference.json');
const SEED = 20;
const COUNT = 200;
/** Shots of the oracle a pair: many where no short-turn connection exists. */
const SHOTS = { near: 100, far: 10 };

interface Reference {
  readonly made: string;
  readonly seed: number;
  /** least length known, in radii, and by what it was found */
  readonly pairs: readonly { readonly apart: number; readonly length: number; readonly by: string }[];
}

/** The connector's own descent, far wider: sixty random helices, the best six made into 64 arcs. */
function wideDescent({ from, to, apart }: PosePair): number {
  const random = seededRandom(7);
  const goal = seenFromStart(from, to);
  const rough = new ChainTightener(12);
  const fine = new ChainTightener(64);
  const found: TurnChain[] = [];
  for (let start = 0; start < 60; start++) {
    const length = apart + 1 + 6 * random();
    const [plane, torsion, bend] = [2 * Math.PI * random(), 3 * random() - 1.5, 0.6 + 0.4 * random()];
    const bends = Float64Array.from({ length: 24 }, (_, i) => {
      const angle = plane + (torsion * length * ((i >> 1) + 0.5)) / 12;
      return bend * (i % 2 === 0 ? Math.cos(angle) : Math.sin(angle));
    });
    const { chain, miss } = rough.tighten({ bends, shares: new Float64Array(12).fill(1 / 12), length }, goal, 60, 1e-7);
    if (miss < 1e-2) found.push(chain);
  }
  found.sort((a, b) => a.length - b.length);
  const lengths = found.slice(0, 6).map((chain) => {
    const once = fine.tighten(redivideChain(chain, 64), goal, 80, 1e-8).chain;
    const { chain: closed, miss } = fine.close(fine.tighten(redivideChain(once, 64), goal, 120, 1e-9).chain, goal);
    return miss < 1e-9 ? closed.length : Number.POSITIVE_INFINITY;
  });
  return Math.min(...lengths);
}

function fastLength({ from, to }: PosePair): number {
  const path = shortestFreePath(from, to, 1);
  return path ? pathLengthMm(path) : Number.POSITIVE_INFINITY;
}

function makeReference(): Reference {
  const pairs = posePairs(SEED, COUNT).map((pair, number) => {
    const isFar = connectWithShortTurns(pair.from, pair.to, 1) !== undefined;
    const extremal = shortestExtremal(pair.from, pair.to, isFar ? SHOTS.far : SHOTS.near, number + 1);
    const known = [
      { by: `extremal, ${extremal?.kind}`, length: extremal?.length ?? Number.POSITIVE_INFINITY },
      { by: 'wide descent', length: wideDescent(pair) },
      { by: 'connector', length: fastLength(pair) },
    ];
    const best = known.reduce((least, one) => (one.length < least.length - 1e-7 ? one : least));
    return { apart: pair.apart, length: best.length, by: best.by };
  });
  const made =
    'WRITE_FREE_PAIRS=1 npx vitest run tests/shared/geometry/freeShortest/reference; least of shortestExtremal, wideDescent and shortestFreePath';
  return { made, seed: SEED, pairs };
}

describe('shortest curves in free space, 200 pairs of poses 0.5 to 10 radii apart', () => {
  it.runIf(process.env['WRITE_FREE_PAIRS'])(
    'writes the reference',
    () => {
      writeFileSync(FILE, `${JSON.stringify(makeReference(), null, 1)}\n`);
      expect(existsSync(FILE)).toBe(true);
    },
    3_600_000,
  );

  it('are within 0.5 % of the shortest known, end where they should and keep the radius', () => {
    const reference = JSON.parse(readFileSync(FILE, 'utf8')) as Reference;
    const pairs = posePairs(reference.seed, reference.pairs.length);
    expect(pairs).toHaveLength(COUNT);
    for (const [i, { from, to, apart }] of pairs.entries()) {
      const known = reference.pairs[i] as Reference['pairs'][number];
      expect(apart).toBeCloseTo(known.apart, 9);
      const found = shortestFreePath(from, to, 1);
      expect(found).toBeDefined();
      if (!found) continue;
      expect(pathLengthMm(found) / known.length, `pair ${i}, ${apart} radii apart`).toBeLessThan(1.005);
      expect(distance(pathEnd(found).point, to.point)).toBeLessThan(1e-7);
      expect(distance(pathEnd(found).direction, to.direction)).toBeLessThan(1e-7);
      expect(tightestRadiusMm(found)).toBeGreaterThanOrEqual(1);
    }
  });

  it('agree with extremals shot live', () => {
    let curved = 0;
    for (const [i, pair] of posePairs(31, 8).entries()) {
      const extremal = shortestExtremal(pair.from, pair.to, 30, i);
      if (!extremal) continue;
      if (extremal.kind === 'curved all along') curved++;
      expect(fastLength(pair)).toBeLessThan(extremal.length * 1.005);
    }
    expect(curved).toBeGreaterThan(0);
  });
});
