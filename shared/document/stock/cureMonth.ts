/**
 * When hose was cured, as months since year 0, for putting the oldest first; `undefined` where it is not stated. A quarter (2Q26,
 * 2Q2026) counts from its first month, years of two digits are of this century; a day adds its part of the month.
 */
export function cureMonth(cureDate: string | undefined): number | undefined {
  const quarter = /^([1-4])Q(\d{2}|\d{4})$/.exec(cureDate ?? '');
  if (quarter !== null) return fullYear(Number(quarter[2])) * 12 + (Number(quarter[1]) - 1) * 3;
  const date = /^(\d{4})-(\d{2})(?:-(\d{2}))?$/.exec(cureDate ?? '');
  if (date === null) return undefined;
  return Number(date[1]) * 12 + Number(date[2]) - 1 + Number(date[3] ?? 1) / 32;
}

function fullYear(year: number): number {
  return year < 100 ? 2000 + year : year;
}
