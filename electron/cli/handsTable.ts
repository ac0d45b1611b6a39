import { fittingOrder } from '../../shared/document/lay/fittingOrder.ts';
import type { Hands, NutHands } from '../../shared/document/lay/hands.ts';
import type { Lay } from '../../shared/document/lay/schema.ts';
import { directionWords, secondWords, swingWords, thingName } from '../../shared/document/wording/handWords.ts';
import { formatNumber } from '../../shared/sheets/format/index.ts';
import { inColumns } from './inColumns.ts';

const HEADINGS = ['RUN', 'END', 'NUT', 'SWING', 'ALONE', 'HANDLE TO', 'SECOND WRENCH', 'IN THE WAY', 'REACH'];

/** Room for wrenches at each nut, reach, and the order of fitting; nothing for lays that say nothing of hands. */
export function handsTable(lays: readonly Lay[]): string[] {
  const known = lays.flatMap((lay) => (lay.hands === undefined ? [] : [{ run: lay.run, hands: lay.hands }]));
  if (known.length === 0) return [];
  const basis = [...new Set(known.flatMap(({ hands }) => hands.basis))];
  return [
    '',
    'HANDS: how far a wrench swings at each nut, with all hoses there and with none of the others',
    ...inColumns([HEADINGS, ...known.flatMap(({ run, hands }) => rows(run, hands))]),
    ...orderLines(lays),
    ...basis.map((line) => `  taken: ${line}`),
  ];
}

function rows(run: string, hands: Hands): string[][] {
  const nuts = (['a', 'b'] as const).flatMap((side) => {
    const nut = hands[side];
    return nut === undefined ? [] : [[side.toUpperCase(), ...nutRow(nut)]];
  });
  return nuts.map((nut, i) => [i === 0 ? run : '', ...nut, i === 0 ? reachText(hands) : '']);
}

function nutRow(nut: NutHands): string[] {
  const { swing, alone } = nut;
  return [
    `${formatNumber(nut.hexMm, 1)} mm${nut.hexAssumed ? '?' : ''}`,
    swingWords(nut),
    alone === undefined ? '' : `${Math.floor(alone.widestDeg)}°`,
    swing.middle === undefined || swing.widestDeg >= 360 ? '' : directionWords(swing.middle),
    secondWords(nut),
    swing.inTheWay.map(thingName).join(', '),
  ];
}

/** `5 of 6`, and where only a mirror sees. */
function reachText({ places }: Hands): string {
  const mirrors = places.filter(({ by }) => by === 'mirror');
  const where = mirrors.map(({ at, why }) => `${why} at ${formatNumber(at.arcLengthMm, 0)} mm`).join('; ');
  return `${places.length - mirrors.length} of ${places.length}${where === '' ? '' : `; mirror: ${where}`}`;
}

function orderLines(lays: readonly Lay[]): string[] {
  const { order, after, stuck } = fittingOrder({ lays });
  if (Object.keys(after).length === 0) return ['order of fitting: any, each nut can be tightened with all hoses there'];
  return [
    `order of fitting: ${order.join(', ')}`,
    ...Object.entries(after).map(([run, first]) => `  ${run} after ${first.join(', ')}`),
    ...stuck.map((runs) => `  neither of ${runs.join(', ')} can be tightened after the other: loosen, or move one`),
  ];
}
