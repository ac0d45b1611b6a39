import type { Column } from './columns.ts';

/** What a cell says, or why it cannot be read. */
export type CellReading =
  | { readonly ok: true; readonly value: number | boolean | string | string[] | [number, number][] }
  | { readonly ok: false; readonly message: string };

const NUMBER = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?$/;
const WITH_COMMA = /^[+-]?\d[\d.,\s]*$/;
const WITH_UNIT = /^([+-]?\d*\.?\d+)\s*([^\d\s].*)$/;

/**
 * Reads one trimmed, non-empty cell of a part table by its column. Numbers take a decimal point and nothing else; words
 * stand apart by spaces; pairs are two numbers with a colon between, apart by spaces.
 */
export function readCell(column: Column, text: string): CellReading {
  if (column.cell === 'text') return { ok: true, value: text };
  if (column.cell === 'words') return { ok: true, value: text.split(/\s+/) };
  if (column.cell === 'pairs') return readPairs(column, text);
  return column.cell === 'number' ? readNumber(column, text) : readYesNo(text);
}

function readPairs(column: Column, text: string): CellReading {
  const pairs: [number, number][] = [];
  for (const pair of text.split(/\s+/)) {
    const halves = pair.split(':');
    const [from, to] = halves.map((half) => readNumber(column, half));
    if (halves.length !== 2 || !from?.ok || !to?.ok)
      return refuse('expected pairs of numbers with a colon between, such as 20:17000 150:13600');
    pairs.push([Number(from.value), Number(to.value)]);
  }
  return { ok: true, value: pairs };
}

function readNumber(column: Column, text: string): CellReading {
  const dash = column.key === 'dash' ? /^-(\d+)$/.exec(text) : null;
  if (dash !== null) return refuse(`write the dash size without its dash: ${dash[1]}`);
  if (NUMBER.test(text)) {
    const value = Number(text);
    return Number.isFinite(value) ? { ok: true, value: value === 0 ? 0 : value } : refuse('too large a number');
  }
  if (text.includes(',') && WITH_COMMA.test(text)) return refuse(commaSentence(text));
  const unit = WITH_UNIT.exec(text);
  if (unit !== null && NUMBER.test(unit[1] ?? ''))
    return refuse(`expected the number alone, ${unit[1]}; the unit is in the heading ${column.heading}`);
  return refuse('expected a number with a decimal point');
}

function commaSentence(text: string): string {
  const point = text.replace(',', '.');
  const without = text.replaceAll(',', '');
  const thousands = /^[+-]?\d{1,3}(,\d{3})+(\.\d+)?$/.test(text);
  if (thousands && NUMBER.test(point))
    return `numbers take a decimal point and no other mark; this could be read as ${point} or as ${without}: write the one that is meant`;
  if (thousands) return `numbers take a decimal point and no other mark; write ${without}`;
  return NUMBER.test(point)
    ? `numbers take a decimal point, not a comma; write ${point}`
    : 'numbers take one decimal point and no other mark';
}

function readYesNo(text: string): CellReading {
  const word = text.toLowerCase();
  if (word === 'yes' || word === 'true') return { ok: true, value: true };
  if (word === 'no' || word === 'false') return { ok: true, value: false };
  return refuse('expected yes or no');
}

function refuse(message: string): CellReading {
  return { ok: false, message };
}
