import type { Hose } from '../parts/schema.ts';
import { type Assembly, HOSE, type RatedPart, ratedParts } from './assemblyPressure.ts';

/** How a finished hose is tested, by the rule for its kind. */
export interface ProofTest {
  /** times the working pressure of the weakest part */
  readonly multiple: number;
  readonly pressureKpa: number;
  /** true = the test pressure that the hose's own maker states, which comes before any multiple */
  readonly byMaker: boolean;
  /** least, as the hose's own maker states it; never reckoned from the working pressure */
  readonly burstKpa?: number;
  readonly holdFromS: number;
  readonly holdToS: number;
  readonly weakest: RatedPart;
  /** parts of which no rating is known: the proof may be too much for them */
  readonly unrated: readonly string[];
  readonly source: string;
  readonly dissent: string;
}

interface ProofRule {
  readonly multiple: number;
  readonly holdS: readonly [number, number];
}

/** NAHAD, recommendations on hose assemblies (associationdatabase.com/aws/NAHAD/.../109637). */
const NAHAD: Record<'hydraulic' | 'fluoropolymer' | 'industrial', ProofRule> = {
  hydraulic: { multiple: 2, holdS: [30, 60] },
  fluoropolymer: { multiple: 1.5, holdS: [60, 60] },
  industrial: { multiple: 1.5, holdS: [300, 300] },
};
const SOURCE = 'NAHAD, hose assembly recommendations: on the working pressure of the weakest part';
const DISSENT =
  "an aircraft hose shop tests every hose to 2 x its rating (kitplanes.com), a kit builder to 1.5 (rv9a.card-net.org); the maker's own test pressure comes first";

/**
 * The proof test of one run's finished hose, with liquid: fluoropolymer 1.5 times for a minute, oil and fuel rubber twice for half a
 * minute to a minute, water hoses 1.5 times for five minutes, of the working pressure of the weakest part at the
 * service's temperature. It says what is usual; the makers of hose and ends say what holds.
 */
export function proofTest(run: Assembly): ProofTest {
  return testBy(run, NAHAD[kindOf(run.hose.core)]);
}

/**
 * The tests that there are to choose from, the usual one of its kind first: 1.5 times and twice, each with its own time. Where the hose's
 * maker states a test pressure that is the only one.
 */
export function proofChoices(run: Assembly): readonly ProofTest[] {
  const usual = proofTest(run);
  if (usual.byMaker) return [usual];
  const other = usual.multiple === NAHAD.hydraulic.multiple ? NAHAD.fluoropolymer : NAHAD.hydraulic;
  return [usual, testBy(run, other)];
}

function testBy(run: Assembly, rule: ProofRule): ProofTest {
  const [weakest] = ratedParts(run) as [RatedPart];
  const unrated = [
    ...(run.a.end.maxPressureKpa === undefined ? ['END A'] : []),
    ...(run.b.end.maxPressureKpa === undefined ? ['END B'] : []),
  ];
  const usualKpa = weakest.maxPressureKpa * rule.multiple;
  const { proofPressureKpa, burstPressureKpa } = run.hose;
  // An end that bears less than the hose is not taken to the hose's own test pressure.
  const byMaker = proofPressureKpa !== undefined && (weakest.part === HOSE || proofPressureKpa < usualKpa);
  const pressureKpa = byMaker ? proofPressureKpa : usualKpa;
  return {
    multiple: pressureKpa / weakest.maxPressureKpa,
    pressureKpa,
    byMaker,
    ...(burstPressureKpa === undefined ? {} : { burstKpa: burstPressureKpa }),
    holdFromS: rule.holdS[0],
    holdToS: rule.holdS[1],
    weakest,
    unrated,
    source: SOURCE,
    dissent: DISSENT,
  };
}

function kindOf(core: Hose['core']): keyof typeof NAHAD {
  if (core === 'ptfe-smooth' || core === 'ptfe-convoluted') return 'fluoropolymer';
  return core === 'epdm' || core === 'silicone' ? 'industrial' : 'hydraulic';
}
