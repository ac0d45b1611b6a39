import type { EndMaterial } from '../../document/parts/schema.ts';
import { type NutAdvice, nutTorque } from '../../document/torque/nutTorque.ts';
import { formatFlats, formatTorque } from '../format/index.ts';
import type { SheetEnd } from '../input.ts';
import { type Block, space, stack } from '../layout/block.ts';
import { TYPE } from '../layout/style.ts';
import { tableRows } from '../layout/table.ts';
import { heading, textBlock } from '../layout/textBlock.ts';
import type { LaidSubject } from './subject.ts';

/** The torque of both nuts by every published table that fits, each under its table's name, and the flats where no wrench with a dial goes on. */
export function nutsBlock({ paper, run, widthMm }: LaidSubject): Block {
  const sides = (['a', 'b'] as const).map((side) => ({
    name: side.toUpperCase(),
    advice: nutTorque(run[side].end, mateOf(run[side])),
  }));
  const share = (part: number): number => widthMm * part;
  const columns = [
    { title: 'nut at', widthMm: share(0.15), bold: true },
    { title: 'by the table', widthMm: share(0.34) },
    { title: 'torque', widthMm: share(0.33) },
    { title: 'flats past seating', widthMm: share(0.18) },
  ];
  const [a, b] = sides;
  const alike = JSON.stringify(a?.advice) === JSON.stringify(b?.advice);
  const told = alike && a !== undefined ? [{ name: 'A and B', advice: a.advice }] : sides;
  const rows = told.flatMap(({ name, advice }) => rowsOf(name, advice));
  const table = tableRows(paper, columns, rows);
  const sources = new Set(
    sides.flatMap(({ advice }) => [
      ...advice.torques.map(({ table: { name, source } }) => `${name}: ${source}.`),
      ...(advice.flats === undefined ? [] : [`${advice.flats.name}: ${advice.flats.source}.`]),
    ]),
  );
  const notes = told.flatMap(({ name, advice }) => (advice.note === undefined ? [] : [`END ${name}: ${advice.note}`]));
  const said = [
    "Published sets differ by as much as two to one, so none is chosen here: the figure of the end's own maker comes first. Two wrenches, the hose held; it may not turn.",
    ...notes,
    ...sources,
  ];
  return stack([
    heading('Nuts', widthMm),
    ...(rows.length === 0 ? [] : [table.titles, ...table.rows, space(0.8)]),
    ...said.map((text) => textBlock(paper, text, widthMm, { sizePt: TYPE.tiny + 0.4 })),
  ]);
}

/** Metal of what the nut goes on: the last adapter, else the port, where it is stated. */
function mateOf({ port, stack: on }: SheetEnd): EndMaterial | undefined {
  return on?.adapters[on.adapters.length - 1]?.adapter.material ?? port.material;
}

function rowsOf(name: string, { own, torques, flats }: NutAdvice): string[][] {
  const turned = flats === undefined ? '-' : formatFlats(flats.least, flats.most);
  const lines = [
    ...(own === undefined ? [] : [[`The end's own: ${own.source}`, `${formatTorque(own.torqueNm)}: this one holds`]]),
    ...torques.map(({ table, leastNm, mostNm }) => [table.name, formatTorque(leastNm, mostNm)]),
  ];
  return lines.map((line, i) => [i === 0 ? `END ${name}` : '', ...line, i === 0 ? turned : '']);
}
