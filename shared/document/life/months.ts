/** How many months lie between two days `YYYY-MM-DD`: whole months, and days as parts of 31. Grows with the second day. */
export function monthsBetween(from: string, to: string): number {
  const [year, month, day] = numbersOf(from);
  const [toYear, toMonth, toDay] = numbersOf(to);
  return (toYear - year) * 12 + (toMonth - month) + (toDay - day) / 31;
}

/** The day `months` whole months after a day `YYYY-MM-DD`; where that month has no such day, its last. */
export function monthsOn(from: string, months: number): string {
  const [year, month, day] = numbersOf(from);
  const then = year * 12 + (month - 1) + months;
  const [thenYear, thenMonth] = [Math.floor(then / 12), (((then % 12) + 12) % 12) + 1];
  const last = new Date(Date.UTC(thenYear, thenMonth, 0)).getUTCDate();
  return `${digits(thenYear, 4)}-${digits(thenMonth, 2)}-${digits(Math.min(day, last), 2)}`;
}

function numbersOf(day: string): [number, number, number] {
  return [Number(day.slice(0, 4)), Number(day.slice(5, 7)), Number(day.slice(8, 10))];
}

function digits(value: number, places: number): string {
  return String(value).padStart(places, '0');
}
