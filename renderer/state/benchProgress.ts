import type { AsBuilt, Project } from '../../shared/document/project/schema.ts';

/** How far a hose has come on the bench, by what is written down of it. */
export type MadeState = 'to-make' | 'made' | 'failed' | 'proved' | 'fitted';

export const MADE_WORDS: Readonly<Record<MadeState, string>> = {
  'to-make': 'to be made',
  made: 'made, not tested',
  failed: 'failed its test',
  proved: 'proof-tested',
  fitted: 'fitted',
};

export function madeState(built: AsBuilt | undefined): MadeState {
  if (built === undefined) return 'to-make';
  if (built.proof?.failed === true || built.systemTest?.failed === true) return 'failed';
  if (built.fittedOn !== undefined) return 'fitted';
  if (built.proof !== undefined) return 'proved';
  return built.cutLengthMm !== undefined || built.clockDeg !== undefined || built.crimpMm !== undefined
    ? 'made'
    : 'to-make';
}

/** How many hoses of a project stand in each state. */
export function madeCounts({ runs }: Pick<Project, 'runs'>): Readonly<Record<MadeState, number>> {
  const counts = { 'to-make': 0, made: 0, failed: 0, proved: 0, fitted: 0 };
  for (const { asBuilt } of runs) counts[madeState(asBuilt)]++;
  return counts;
}

/** Diameters as they are typed, mm, with a decimal point or comma: `21.02 21.05`. null = something else is among them. */
export function readReadings(text: string): readonly number[] | null {
  const number = /\d+(?:[.,]\d+)?/g;
  if (/[^\s;,/]/.test(text.replace(number, ''))) return null;
  const read = (text.match(number) ?? []).map((word) => Number(word.replace(',', '.')));
  return read.every((mm) => mm > 0) ? read : null;
}
