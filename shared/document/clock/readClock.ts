import { degreesApart, wrapDegrees } from '../../base/units.ts';

/** A hose that a note on its clock may mean. */
export interface ClockShape {
  /** in the program's own convention, degrees */
  readonly clockDeg: number;
  /** how the note is then read */
  readonly readAs: string;
}

/** One shape, or two between which only who wrote the note can tell; or why it is no clock. */
export type ClockReading =
  | { readonly ok: true; readonly shapes: readonly [ClockShape] | readonly [ClockShape, ClockShape] }
  | { readonly ok: false; readonly message: string };

/**
 * What hose a note on the clock between two angled ends means, such as `225 far to near clockwise`, `near at 6, counter-clockwise
 * 270 to far`, `far at 12 o'clock, near at 9 o'clock`, `MIL code 54`. One that does not say which end it is read from and which way,
 * such as `V225`, `@60` or `clockwise 90`, means two hoses, a and 360 - a: both are answered, and nothing is guessed. 0 and
 * 180 are the same both ways. Near is the end in the reader's hand; END A and END B are near and far by `look from END
 * A`. Conventions: MIL-DTL-83796/5 Fig. 3 notes 1 and 4 (near to far counter-clockwise; the code is the angle / 5); hose makers (far to
 * near clockwise; far end at 12); all give one number, only a reversed way gives 360 - a.
 */
export function readClock(text: string): ClockReading {
  const note = inPlainWords(text);
  if (/(^|[^\w])-\s*\d/.test(note.replaceAll('counter-clockwise', '')))
    return refuse('expected an angle from 0 to 360 degrees, without a sign');
  const hands = handsOf(note);
  if (typeof hands === 'string') return refuse(hands);
  const angle = angleOf(note);
  if (typeof angle === 'string') return refuse(angle);
  const byHands = hands.near === undefined || hands.far === undefined ? undefined : wrapDegrees(hands.near - hands.far);
  if (angle === undefined) return byHands === undefined ? refuse(NOTHING) : one(byHands, 'both ends by the clock face');
  const byAngle = shapesOf(note, angle);
  if (byHands === undefined) return { ok: true, shapes: byAngle };
  const agrees = byAngle.some(({ clockDeg }) => degreesApart(clockDeg, byHands) < SAME_DEG);
  if (!agrees) return refuse('the note contradicts itself: its clock positions and its angle are two hoses');
  return one(byHands, 'both ends by the clock face');
}

const NOTHING = "expected an angle or two clock positions, such as 225, or: far at 12 o'clock, near at 9 o'clock";
/** deg. Clock positions and an angle that say the same hose: both are written to a tenth. */
const SAME_DEG = 0.11;

function refuse(message: string): ClockReading {
  return { ok: false, message };
}

function one(clockDeg: number, readAs: string): ClockReading {
  return { ok: true, shapes: [{ clockDeg, readAs }] };
}

/** Lower case, one word for each thing: near, far, clockwise, counter-clockwise, to, o'clock. */
function inPlainWords(text: string): string {
  const plain = text
    .toLowerCase()
    .replace(/[\u2019`]/g, "'")
    .replace(/\s+/g, ' ')
    .replace(/\b(anti|counter)[- ]?clock[- ]?wise\b|\bccw\b/g, 'counter-clockwise')
    .replace(/\bcw\b|\bclock-wise\b/g, 'clockwise')
    .replace(/→|->|➔/g, ' to ')
    .replace(/\b(nearest|closest|nearer|closer)\b/g, 'near')
    .replace(/\b(furthest|farthest|further|farther)\b/g, 'far');
  const viewer = /\blook(?:ing|ed)?\b[^.;]*?\bfrom (?:the )?end ([ab])\b/.exec(plain)?.[1];
  if (viewer === undefined) return plain;
  const other = viewer === 'a' ? 'b' : 'a';
  return plain.replaceAll(`end ${viewer}`, 'near').replaceAll(`end ${other}`, 'far');
}

const HAND =
  /\b(near|far)\b((?:(?!\bnear\b|\bfar\b)[^.;:])*?)(?:\b(\d{1,2})(?::(\d{2}))? ?o'? ?clock|(\d+(?:[.,]\d+)?) ?(?:°|degrees|deg)? clockwise from 12\b|\bat (12|11|10|[1-9])\b(?! ?(?:°|deg|\d|[.,:]\d)))/g;

/** Where the outlets stand on the clock face, degrees clockwise from 12; or why that cannot be. */
function handsOf(note: string): { near?: number; far?: number } | string {
  const hands: { near?: number; far?: number } = {};
  for (const [, end, , hour, minutes, deg, bare] of note.matchAll(HAND)) {
    const side = end as 'near' | 'far';
    const hours = Number(hour ?? bare ?? 0);
    if (hours > 12 || Number(minutes ?? 0) > 59) return `expected a clock position from 1 to 12, got ${hour}`;
    const at = wrapDegrees(deg === undefined ? hours * 30 + Number(minutes ?? 0) / 2 : Number(deg.replace(',', '.')));
    const before = hands[side];
    if (before !== undefined && degreesApart(before, at) > SAME_DEG)
      return `the note says two positions of the ${side} end`;
    hands[side] = at;
  }
  return hands;
}

/** Everything with a number in it that is not the angle. */
const NOT_ANGLES = [
  /\(?\bbetween \d{1,2} and \d{1,2} o'? ?clock\)?/g,
  /\d{1,2}(?::\d{2})? ?o'? ?clock/g,
  /\d+(?:[.,]\d+)? ?(?:°|degrees|deg)? clockwise from 12\b/g,
  /\bat (?:12|11|10|[1-9])\b(?! ?(?:°|deg|\d|[.,:]\d))/g,
  /(?:#|\b(?:fitting|end|elbow|outlet|no\.?) ?)[12]\b/g,
];

/** deg. The one angle of a note, undefined where it has none; or why that cannot be. */
function angleOf(note: string): number | undefined | string {
  const rest = NOT_ANGLES.reduce((left, pattern) => left.replace(pattern, ' '), note);
  const code = /\b(?:mil|code)\b[^\d]*(\d{2})\b/.exec(rest)?.[1];
  if (code !== undefined)
    return Number(code) < FULL_TURN_CODE ? Number(code) * 5 : 'expected a code from 00 to 71: the angle over 5';
  const numbers = new Set([...rest.matchAll(/\d+(?:[.,]\d+)?/g)].map(([n]) => Number(n.replace(',', '.'))));
  const [angle, ...more] = numbers;
  if (more.length > 0) return 'expected one angle, not several';
  return angle !== undefined && angle > 360 ? 'expected an angle from 0 to 360 degrees' : angle;
}

/** Of the part code: 72 steps of 5 degrees are a full turn. */
const FULL_TURN_CODE = 72;

function shapesOf(note: string, angle: number): readonly [ClockShape] | readonly [ClockShape, ClockShape] {
  const deg = wrapDegrees(angle);
  if (/\b(?:mil|code)\b[^\d]*\d{2}\b/.test(note)) return [{ clockDeg: deg, readAs: 'the part code: angle over 5' }];
  const wayFromNear = wayOf(note);
  const right: ClockShape = { clockDeg: deg, readAs: `counter-clockwise ${angle} degrees from near to far` };
  const wrong: ClockShape = { clockDeg: wrapDegrees(360 - deg), readAs: `clockwise ${angle} degrees from near to far` };
  if (degreesApart(right.clockDeg, wrong.clockDeg) < 1e-9) return [{ ...right, readAs: 'the same both ways round' }];
  if (wayFromNear === undefined) return [right, wrong];
  return [wayFromNear === 'counter-clockwise' ? right : wrong];
}

/** Which way it is read from near to far, where the note says so beyond doubt: the way, and both of from and to. */
function wayOf(note: string): 'clockwise' | 'counter-clockwise' | undefined {
  const counter = note.includes('counter-clockwise');
  const clockwise = note
    .replaceAll('counter-clockwise', '')
    .replace(NOT_ANGLES[2] as RegExp, '')
    .includes('clockwise');
  const to = only(note.matchAll(/\bto (?:the )?(?:outlet of (?:the )?)?(near|far)\b/g));
  const from = only(note.matchAll(/\bfrom (?:the )?(?:outlet of (?:the )?)?(near|far)\b/g));
  if (counter === clockwise || to === undefined || to === from || !mentionsBoth(note)) return undefined;
  return counter === (to === 'far') ? 'counter-clockwise' : 'clockwise';
}

function only(found: Iterable<RegExpMatchArray>): string | undefined {
  const words = new Set([...found].map(([, word]) => word));
  return words.size === 1 ? [...words][0] : undefined;
}

function mentionsBoth(note: string): boolean {
  return /\bnear\b/.test(note) && /\bfar\b/.test(note);
}
