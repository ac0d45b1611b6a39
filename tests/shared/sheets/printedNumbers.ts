/** A number with its unit as it stands on a paper, and by how much print may differ from what is stored. */
export interface Printed {
  readonly unit: 'mm' | 'in' | 'deg' | 'percent' | 'kPa' | 'psi' | 'C' | 'F';
  readonly value: number;
  /** one step of what is printed, in the unit: rounding up, down or to the nearest keeps within it */
  readonly step: number;
  readonly text: string;
}

const UNITS: readonly (readonly [Printed['unit'], RegExp])[] = [
  ['mm', /(-?\d+(?:\.\d+)?) ?mm\b/g],
  ['percent', /(-?\d+(?:\.\d+)?) ?%/g],
  ['kPa', /(-?\d+(?:\.\d+)?) kPa/g],
  ['psi', /(-?\d+(?:\.\d+)?) psi/g],
  ['C', /(-?\d+(?:\.\d+)?) °C/g],
  ['F', /(-?\d+(?:\.\d+)?) °F/g],
  ['deg', /(-?\d+(?:\.\d+)?)°/g],
];
/** Not inch-pounds. */
const INCHES = /(?<![\d/.-])(-?)(?:(\d+) )?(\d+)(?:\/(\d+))? in\b(?! \d|-lb)/g;

/** Every number with a unit in a text of a paper. */
export function printedNumbers(text: string): Printed[] {
  const plain = UNITS.flatMap(([unit, pattern]) =>
    [...text.matchAll(pattern)].map(([found, digits = '']): Printed => {
      const decimals = digits.split('.')[1]?.length ?? 0;
      return { unit, value: Number(digits), step: 10 ** -decimals, text: found };
    }),
  );
  const inches = [...text.matchAll(INCHES)].map(([found, sign, whole = '0', top, bottom]): Printed => {
    const value = bottom === undefined ? Number(top) : Number(whole) + Number(top) / Number(bottom);
    return { unit: 'in', value: sign === '-' ? -value : value, step: 1 / 16, text: found };
  });
  return [...plain, ...inches];
}

/** The printed numbers that stand for none of the stored ones, which are given by unit in mm, degrees, ratios, kPa and C. */
export function strangers(
  printed: readonly Printed[],
  stored: Readonly<Record<'mm' | 'deg' | 'ratio' | 'kPa' | 'C', readonly number[]>>,
): Printed[] {
  const among: Record<Printed['unit'], readonly number[]> = {
    mm: stored.mm,
    in: stored.mm.map((mm) => mm / 25.4),
    deg: stored.deg,
    percent: stored.ratio.map((ratio) => ratio * 100),
    kPa: stored.kPa,
    psi: stored.kPa.map((kPa) => kPa / 6.894757293),
    C: stored.C,
    F: stored.C.map((celsius) => (celsius * 9) / 5 + 32),
  };
  return printed.filter(({ unit, value, step }) => !among[unit].some((one) => Math.abs(one - value) < step + 1e-6));
}
