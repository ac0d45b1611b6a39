import type { PartKind, StoredRow } from '../../../shared/document/parts/columns.ts';
import { completeEnd } from '../../../shared/document/parts/completeEnd.ts';
import { cutOffMm } from '../../../shared/document/parts/cutOff.ts';
import { seatWords } from '../../../shared/document/wording/seatWords.ts';
import { formatDash } from '../../../shared/sheets/format/index.ts';

type LengthText = (mm: number) => string;
type Lines = { readonly [K in PartKind]: (row: StoredRow[K], text: LengthText) => readonly string[] };

const LINES: Lines = {
  hoses: (hose, text) => [
    formatDash(hose.dash),
    `Ø ${text(hose.outsideDiameterMm)}`,
    `bends to ${text(hose.minBendRadiusMm)}`,
  ],
  ends: (end, text) => {
    const whole = completeEnd(end);
    return [
      formatDash(end.dash),
      end.bendAngleDeg === 0 ? 'straight' : `${end.bendAngleDeg}°`,
      ...(whole === undefined ? [] : [`C ${text(cutOffMm(whole))}`]),
      seatWords(end.seat),
    ];
  },
  sleeves: (sleeve, text) => [`${text(sleeve.insideDiameterMm)} inside`, `${text(sleeve.outsideDiameterMm)} outside`],
  adapters: ({ portSeat, seat, dash, bendAngleDeg }) => [
    `${seatWords(portSeat)} to ${seatWords(seat)} ${formatDash(dash)}`,
    bendAngleDeg === 0 ? 'straight' : `${bendAngleDeg}°`,
  ],
  clamps: (clamp, text) => [`holds ${text(clamp.holdsFromMm)} to ${text(clamp.holdsToMm)}`],
  rolls: (roll, text) => [roll.hose, text(roll.lengthMm), ...(roll.cureDate === undefined ? [] : [roll.cureDate])],
};

/** A part on one line of the list: what tells it from its neighbours. */
export function partLine<K extends PartKind>(kind: K, row: StoredRow[K], text: LengthText): string {
  return LINES[kind](row, text).join(' · ');
}

/** What a part is called; a roll goes by its id. */
export function partTitle(row: StoredRow[PartKind]): string {
  return 'name' in row ? row.name : row.id;
}
