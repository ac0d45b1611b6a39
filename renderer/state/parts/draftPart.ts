import { bad, type Problem, type Result } from '../../../shared/base/result.ts';
import { checkRow } from '../../../shared/document/parts/checkRow.ts';
import { type Column, columnsOf, type PartKind, type StoredRow } from '../../../shared/document/parts/columns.ts';
import { cellText } from '../../../shared/document/parts/partTableCsv.ts';
import { readCell } from '../../../shared/document/parts/readCell.ts';
import { lengthText, readLength } from '../../../shared/document/parts/readLength.ts';
import { freshId } from '../edits/freshId.ts';

export type LengthUnit = 'mm' | 'in';

/** What was typed into a field and the unit its bare numbers were meant in: a change of units does not change a figure. */
export interface Typed {
  readonly text: string;
  readonly unit: LengthUnit;
}

/** A part on its card while it is being written: what it starts from, and what was typed over it. Nothing is kept yet. */
export interface PartDraft {
  readonly kind: PartKind;
  /** the row it will take the place of; null = a new one */
  readonly id: string | null;
  /** values by key; a field that was not touched keeps its own to the last digit */
  readonly from: Readonly<Record<string, unknown>>;
  readonly typed: Readonly<Record<string, Typed>>;
  /** Keep was pressed: from now on what is missing is said, too */
  readonly asked: boolean;
}

/** A card for a row that is there. */
export function draftOf(kind: PartKind, row: StoredRow[PartKind]): PartDraft {
  return { kind, id: row.id, from: { ...row }, typed: {}, asked: false };
}

/** A blank card: figures that a new part has until told otherwise, and whose they are. */
export function blankDraft(kind: PartKind): PartDraft {
  return { kind, id: null, from: { ...USUAL[kind], provenance: 'own' }, typed: {}, asked: false };
}

/** A card that starts from another part. Its figures become the user's own to answer for, so the source is asked anew. */
export function copyDraft(kind: PartKind, row: StoredRow[PartKind]): PartDraft {
  const { id: _id, source: _source, ...figures } = row;
  const name = 'name' in row ? { name: `${row.name}, copy` } : {};
  return { kind, id: null, from: { ...figures, ...name, provenance: 'own' }, typed: {}, asked: false };
}

const USUAL: Readonly<Record<PartKind, Readonly<Record<string, unknown>>>> = {
  hoses: {},
  ends: { seat: 'flare-37', bendAngleDeg: 0, turning: 'swivel' },
  sleeves: {},
  adapters: { form: 'straight', seat: 'flare-37', bendAngleDeg: 0 },
  clamps: {},
  rolls: {},
};

export function isLength({ key, cell }: Column): boolean {
  return cell === 'number' && key.endsWith('Mm');
}

/** What a field shows: what was typed, else the draft's value in the unit asked for. */
export function fieldText(draft: PartDraft, column: Column, unit: LengthUnit): string {
  const typed = draft.typed[column.key];
  if (typed !== undefined) return typed.text;
  const value = draft.from[column.key];
  return isLength(column) && typeof value === 'number' ? lengthText(value, unit) : cellText(value);
}

/** Types into a field. Typing back what is there takes the typing away, so that nothing is left to keep. */
export function typeInto(draft: PartDraft, column: Column, typed: Typed): PartDraft {
  const { [column.key]: _old, ...others } = draft.typed;
  const plain: PartDraft = { ...draft, typed: others };
  return fieldText(plain, column, typed.unit) === typed.text
    ? plain
    : { ...draft, typed: { ...others, [column.key]: typed } };
}

export function isTouched(draft: PartDraft): boolean {
  return draft.id === null || Object.keys(draft.typed).length > 0;
}

/** A value, none, or why what was typed is none. */
type FieldReading = { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly message: string };

function readField(column: Column, { text, unit }: Typed): FieldReading {
  const bare = text.trim();
  if (bare === '') return { ok: true, value: undefined };
  if (isLength(column)) {
    const read = readLength(bare, unit);
    return read.ok ? { ok: true, value: read.mm } : read;
  }
  return readCell(column, column.cell === 'number' ? bare.replace(',', '.') : bare);
}

/** The values of a draft by key, as far as they can be read, and what is wrong with the rest. */
export function draftValues(draft: PartDraft): {
  readonly values: Readonly<Record<string, unknown>>;
  readonly problems: readonly Problem[];
} {
  const values: Record<string, unknown> = { ...draft.from };
  const problems: Problem[] = [];
  for (const column of columnsOf(draft.kind)) {
    const typed = draft.typed[column.key];
    if (typed === undefined) continue;
    delete values[column.key];
    const read = readField(column, typed);
    if (!read.ok) problems.push({ path: column.key, message: read.message });
    else if (read.value !== undefined) values[column.key] = read.value;
  }
  return { values, problems };
}

/**
 * The row a draft says, or everything wrong with it by the key of its field. A new part's id is made of its name, or of its
 * hose for a roll, which has none.
 */
export function readDraft(draft: PartDraft, taken: readonly { readonly id: string }[]): Result<StoredRow[PartKind]> {
  const { values, problems } = draftValues(draft);
  const name = values['name'] ?? (draft.kind === 'rolls' ? `roll ${String(values['hose'] ?? '')}` : '');
  const id = draft.id ?? freshId(String(name), 'part', taken);
  const checked = checkRow(draft.kind, { ...values, id });
  const unread = new Set(problems.map(({ path }) => path));
  const found = checked.ok ? [] : checked.problems.filter(({ path }) => !unread.has(keyOf(path)));
  return checked.ok && problems.length === 0 ? checked : bad([...problems, ...found]);
}

/** The key of the field that a problem speaks of: `listedFluids` of `listedFluids[1]`. */
export function keyOf(path: string): string {
  return path.split('[')[0] ?? path;
}

/** What is wrong with a field, as it is said beside it: headings of a file become the labels of the card. */
export function fieldProblems(draft: PartDraft, found: readonly Problem[], key: string): readonly Problem[] {
  const mine = found.filter(({ path }) => keyOf(path) === key);
  const missing = ({ message }: Problem): boolean => message.startsWith('missing;');
  return draft.asked ? mine : mine.filter((problem) => !missing(problem));
}
