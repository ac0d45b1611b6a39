/** How the trade writes each family of seats: 37° flare, ORB -8, 1/4 NPT, banjo M10. */
const FAMILIES: readonly (readonly [RegExp, (parts: readonly string[]) => string])[] = [
  [/^flare-(\d+)$/, ([angle]) => `${angle}° flare`],
  [/^orb-(\d+)$/, ([dash]) => `ORB -${dash}`],
  [/^npt-(\d+)-(\d+)$/, ([over, under]) => `${over}/${under} NPT`],
  [/^banjo-m(\d+)$/, ([thread]) => `banjo M${thread}`],
];

/** A thread or seat of the tables (`flare-37`) in words; one of no known family is read word by word. */
export function seatWords(seat: string): string {
  for (const [family, say] of FAMILIES) {
    const found = family.exec(seat);
    if (found !== null) return say(found.slice(1));
  }
  return seat.replaceAll('-', ' ');
}
