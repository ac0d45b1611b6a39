import { useId } from 'react';
import type { Problem } from '../../../shared/base/result.ts';
import type { Column, PartKind } from '../../../shared/document/parts/columns.ts';
import { readLength } from '../../../shared/document/parts/readLength.ts';
import { choiceWords, columnLabel, columnUnit } from '../../../shared/document/wording/columnWords.ts';
import { formatInches, formatMm } from '../../../shared/sheets/format/index.ts';
import { fieldText, isLength, type LengthUnit, type PartDraft } from '../../state/parts/draftPart.ts';
import { useBench, useDocument, useSession } from '../../state/useBench.ts';

interface PartFieldProps {
  readonly draft: PartDraft;
  readonly column: Column;
  readonly problems: readonly Problem[];
}

/** One column of a part on its card: what it is called, its unit, what it means, and what is wrong with what stands there. */
export function PartField({ draft, column, problems }: PartFieldProps) {
  const id = useId();
  const { onParts } = useBench();
  const unit: LengthUnit = useSession((session) => session.units) === 'mm' ? 'mm' : 'in';
  const typed = draft.typed[column.key];
  const text = fieldText(draft, column, unit);
  const own = typed?.unit ?? unit;
  const wrong = problems.length > 0;
  const field: FieldParts = {
    id,
    text,
    wrong,
    describedBy: [...(wrong ? [`${id}-wrong`] : []), ...(column.meaning === undefined ? [] : [`${id}-means`])].join(
      ' ',
    ),
    onType: (next) => onParts.type(column, { text: next, unit }),
  };
  return (
    <div className={`field part-field${typed === undefined ? '' : ' part-field-typed'}`}>
      <FieldLabel column={column} id={id} unit={own} text={text} />
      <FieldInput kind={draft.kind} column={column} field={field} />
      {wrong && (
        <p className="field-wrong" id={`${id}-wrong`}>
          {problems.map(({ message }) => onCard(message)).join(' ')}
        </p>
      )}
      {column.meaning !== undefined && (
        <p className="field-means" id={`${id}-means`}>
          {onCard(column.meaning)}
        </p>
      )}
    </div>
  );
}

interface FieldLabelProps {
  readonly column: Column;
  readonly id: string;
  readonly unit: LengthUnit;
  readonly text: string;
}

function FieldLabel({ column, id, unit, text }: FieldLabelProps) {
  const length = isLength(column);
  const shown = length ? unit : columnUnit(column.key);
  const words = (
    <>
      {columnLabel(column.key)}
      {shown !== undefined && <span className="field-unit">, {shown}</span>}
      {column.optional && <span className="field-unit"> · if known</span>}
    </>
  );
  const isGroup = column.cell === 'words' && column.choices !== undefined;
  return (
    <div className="field-head">
      {isGroup ? <span id={id}>{words}</span> : <label htmlFor={id}>{words}</label>}
      {length && <OtherUnit text={text} unit={unit} />}
    </div>
  );
}

/** The same length as the other kind of rule reads it. */
function OtherUnit({ text, unit }: { text: string; unit: LengthUnit }) {
  const read = text.trim() === '' ? undefined : readLength(text, unit);
  if (!read?.ok) return null;
  const fractionTyped = text.includes('/') || unit === 'in';
  return (
    <span className="figure field-other">
      {fractionTyped ? formatMm(read.mm, 'nearest', 2) : formatInches(read.mm, 'nearest', 32)}
    </span>
  );
}

interface FieldParts {
  readonly id: string;
  readonly text: string;
  readonly wrong: boolean;
  readonly describedBy: string;
  readonly onType: (text: string) => void;
}

function FieldInput({ kind, column, field }: { kind: PartKind; column: Column; field: FieldParts }) {
  const hoses = useDocument((state) => state.open?.tables.hoses) ?? [];
  const { cell, key, choices } = column;
  if (cell === 'words' && choices !== undefined) return <WordBoxes kind={kind} column={column} field={field} />;
  const options =
    cell === 'yes-no'
      ? [
          ['yes', 'Yes'],
          ['no', 'No'],
        ]
      : kind === 'rolls' && key === 'hose'
        ? hoses.map((hose) => [hose.id, hose.name])
        : choices?.map((value) => [value, choiceWords(kind, key, value)]);
  if (options !== undefined) return <Options field={field} options={options} optional={column.optional} />;
  const number = cell === 'number';
  return (
    <input
      id={field.id}
      className={number ? 'text-input figure part-number' : 'text-input'}
      inputMode={number && !isLength(column) ? 'decimal' : undefined}
      autoComplete="off"
      value={field.text}
      aria-invalid={field.wrong}
      aria-describedby={field.describedBy || undefined}
      onChange={(event) => field.onType(event.target.value)}
    />
  );
}

interface OptionsProps {
  readonly field: FieldParts;
  readonly options: readonly (readonly string[])[];
  readonly optional: boolean;
}

function Options({ field, options, optional }: OptionsProps) {
  const known = options.some(([value]) => value === field.text);
  return (
    <select
      id={field.id}
      value={field.text}
      aria-invalid={field.wrong}
      aria-describedby={field.describedBy || undefined}
      onChange={(event) => field.onType(event.target.value)}
    >
      {(optional || field.text === '') && <option value="">{optional ? 'not stated' : 'choose'}</option>}
      {!known && field.text !== '' && <option value={field.text}>{field.text}</option>}
      {options.map(([value, words]) => (
        <option key={value} value={value}>
          {words}
        </option>
      ))}
    </select>
  );
}

function WordBoxes({ kind, column, field }: { kind: PartKind; column: Column; field: FieldParts }) {
  const words = field.text.split(/\s+/).filter((word) => word !== '');
  const choices = column.choices ?? [];
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be a grid in every engine; the group has its name
    <div className="word-boxes" role="group" aria-labelledby={field.id}>
      {choices.map((value) => (
        <label key={value} className="check">
          <input
            type="checkbox"
            checked={words.includes(value)}
            onChange={(event) => {
              const kept = choices.filter((one) => (one === value ? event.target.checked : words.includes(one)));
              field.onType(kept.join(' '));
            }}
          />
          {choiceWords(kind, column.key, value)}
        </label>
      ))}
    </div>
  );
}

/** A sentence as it reads on a card: headings of a file become labels, and what a file is told becomes what a person is. */
function onCard(message: string): string {
  if (message.startsWith('missing;')) return 'Still to be stated.';
  const named = message.replace(/\b[a-z]+(?:_[a-z0-9]+)+\b/g, (heading) => {
    const key = heading.replace(/_([a-z0-9])/g, (_, letter: string) => letter.toUpperCase());
    return `“${columnLabel(key)}”`;
  });
  return `${named.charAt(0).toUpperCase()}${named.slice(1)}${/[.?!]$/.test(named) ? '' : '.'}`;
}
