import { type MeasuredEnd, measureEnd } from '../../../shared/document/parts/measure/measureEnd.ts';
import { type MeasureKind, READINGS, type Reading } from '../../../shared/document/parts/measure/readings.ts';
import { readReading } from '../../../shared/document/parts/measure/readReading.ts';
import type { PartDraft, Typed } from './draftPart.ts';
import { draftKey } from './drawerStore.ts';

/** What was read of every card and kind of end, as typed. */
export type TypedReadings = Readonly<Record<string, Readonly<Record<string, Typed>>>>;

export function readingsKey(draft: PartDraft, kind: MeasureKind): string {
  return `${draftKey(draft.kind, draft.id)} ${kind}`;
}

/** The way an end of these values is measured. */
export function measureKindOf({ form, bendAngleDeg }: Readonly<Record<string, unknown>>): MeasureKind {
  if (form === 'banjo') return 'banjo';
  if (bendAngleDeg === 180) return 'half-turn';
  if (typeof bendAngleDeg !== 'number' || bendAngleDeg === 0) return 'straight';
  return form === 'flange' && bendAngleDeg === 90 ? 'flange' : 'elbow';
}

/** The readings of a card's end as typed; the bend it is sold as stands there already when its card has it. */
export function readingTexts(
  all: TypedReadings,
  draft: PartDraft,
  kind: MeasureKind,
  values: Readonly<Record<string, unknown>>,
): Readonly<Record<string, Typed>> {
  const { bendAngleDeg } = values;
  const known = typeof bendAngleDeg === 'number' && bendAngleDeg > 0 && bendAngleDeg < 180;
  const sold: Readonly<Record<string, Typed>> =
    kind === 'elbow' && known ? { soldAngle: { text: String(bendAngleDeg), unit: 'mm' } } : {};
  return { ...sold, ...all[readingsKey(draft, kind)] };
}

/** What is wrong with a reading as typed, in a sentence; an empty field is not wrong. */
export function readingProblem(reading: Reading, typed: Typed | undefined): string | undefined {
  if (typed === undefined || typed.text.trim() === '') return undefined;
  const read = readReading(reading, typed.text, typed.unit);
  return read.ok ? undefined : `${read.message.charAt(0).toUpperCase()}${read.message.slice(1)}.`;
}

/** What the readings typed so far come to. */
export function measureTyped(kind: MeasureKind, texts: Readonly<Record<string, Typed>>): MeasuredEnd {
  const read = READINGS[kind].flatMap((reading) => {
    const typed = texts[reading.key];
    const value = typed === undefined ? undefined : readReading(reading, typed.text, typed.unit);
    return value?.ok ? [[reading.key, value.value] as const] : [];
  });
  return measureEnd(kind, Object.fromEntries(read));
}

/** A hundredth of a mm: what a caliper shows. */
const CALIPER_DECIMALS = 2;

/** What a measured end types on its card, by column; its source says what was read, where the card has none yet. */
export function measuredTexts(
  { end }: MeasuredEnd,
  kind: MeasureKind,
  texts: Readonly<Record<string, Typed>>,
  hasSource: boolean,
): Readonly<Record<string, string>> {
  if (end === undefined) return {};
  const figures = Object.entries(end).map(([key, value]) => [
    key,
    typeof value === 'number' ? String(Number(value.toFixed(CALIPER_DECIMALS)) + 0) : String(value),
  ]);
  const straight = end.bendAngleDeg === 0 ? { dropMm: '' } : {};
  const read = READINGS[kind]
    .filter(({ key }) => (texts[key]?.text ?? '').trim() !== '')
    .map(({ key, letter }) => `${letter} ${texts[key]?.text.trim()}`);
  return {
    ...Object.fromEntries(figures),
    ...straight,
    ...(hasSource ? {} : { source: `measured with caliper and square: ${read.join(', ')}` }),
  };
}
