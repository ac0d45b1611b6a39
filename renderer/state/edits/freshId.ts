interface Named {
  readonly id: string;
}

/**
 * An id made of a name: its words in lower case with hyphens, and a number behind where that is taken. A name without a
 * letter or digit of the alphabet gives `otherwise`.
 */
export function freshId(name: string, otherwise: string, taken: readonly Named[]): string {
  const plain = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  const stem = plain === '' ? otherwise : plain;
  return taken.some(({ id }) => id === stem) ? numberedId(stem, taken, 2) : stem;
}

/** The first free one of `stem-1`, `stem-2`, ... */
export function numberedId(stem: string, taken: readonly Named[], from = 1): string {
  let n = from;
  while (taken.some(({ id }) => id === `${stem}-${n}`)) n++;
  return `${stem}-${n}`;
}
