/** The day on this machine's clock, as it stands on papers and in jobs: 2026-02-28. */
export function isoDay(date: Date): string {
  const two = (n: number) => String(n).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}
