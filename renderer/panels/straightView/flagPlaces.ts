/** Where a flag hangs on its pin: forwards or back, on the upper row (0) or the one under it. */
export interface FlagPlace {
  readonly back: boolean;
  readonly row: 0 | 1;
}

/** px. A flag with its number. */
export const FLAG = { widePx: 30 } as const;

const ROOMS: readonly FlagPlace[] = [
  { back: false, row: 0 },
  { back: true, row: 0 },
  { back: false, row: 1 },
  { back: true, row: 1 },
];

interface Hung extends FlagPlace {
  readonly x: number;
}

/**
 * Where flags hang so that none hides another as long as there is room: `xs` in px along the drawing, the flag that matters most first, kept
 * between the hose's two ends (px). One without room hangs forwards on the lower row, behind those before it.
 */
export function flagPlaces(xs: readonly number[], ends: { readonly a: number; readonly b: number }): FlagPlace[] {
  const hung: Hung[] = [];
  for (const x of xs) {
    const free = ROOMS.find((place) => isFree({ ...place, x }, hung, ends));
    hung.push({ ...(free ?? { back: x + FLAG.widePx > ends.b, row: 1 }), x });
  }
  return hung.map(({ back, row }) => ({ back, row }));
}

function isFree(flag: Hung, hung: readonly Hung[], { a, b }: { readonly a: number; readonly b: number }): boolean {
  const [from, to] = span(flag);
  if (flag.back ? from < a : to > b) return false;
  return hung.every((other) => {
    const [otherFrom, otherTo] = span(other);
    return other.row !== flag.row || to <= otherFrom || otherTo <= from;
  });
}

function span({ x, back }: Hung): readonly [number, number] {
  return back ? [x - FLAG.widePx, x] : [x, x + FLAG.widePx];
}
