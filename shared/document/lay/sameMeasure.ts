import { conventionName } from '../wording/lengthWords.ts';
import type { NamedLength } from './schema.ts';

/** A length with every name it goes by. */
export interface MeasuredLength extends NamedLength {
  readonly names: readonly string[];
}

/** Lengths that go from the same place to the same place are one, under several names: overall of two elbows is centreline to centreline. */
export function sameMeasure(lengths: readonly NamedLength[]): MeasuredLength[] {
  const found: { length: NamedLength; names: string[] }[] = [];
  for (const length of lengths) {
    const name = conventionName(length.convention, length.datum);
    const known = found.find(({ length: { from, to } }) => from === length.from && to === length.to);
    if (known === undefined) found.push({ length, names: [name] });
    else known.names.push(name);
  }
  return found.map(({ length, names }) => ({ ...length, names }));
}
