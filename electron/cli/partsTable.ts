import type { PartDrawer } from '../../shared/document/drawer/partDrawer.ts';
import { partUses } from '../../shared/document/drawer/partUses.ts';
import { PART_KINDS, type PartKind, type StoredRow } from '../../shared/document/parts/columns.ts';
import { completeEnd } from '../../shared/document/parts/completeEnd.ts';
import { cutOffMm, dropMm } from '../../shared/document/parts/cutOff.ts';
import type { PartSheet } from '../../shared/document/parts/partSheet.ts';
import type { EndRow } from '../../shared/document/parts/schema.ts';
import { PART_KIND_WORDS } from '../../shared/document/wording/partWords.ts';
import { formatDash, formatNumber } from '../../shared/sheets/format/index.ts';
import { inColumns } from './inColumns.ts';

type Cells<K extends PartKind> = readonly (readonly [heading: string, cell: (row: StoredRow[K]) => string])[];

const mm = (n: number | undefined): string => (n === undefined ? '' : formatNumber(n, 1));
const lengthsOf = (row: EndRow, of: typeof cutOffMm): string => {
  const end = completeEnd(row);
  return end === undefined ? '' : mm(of(end));
};

const CELLS: { readonly [K in PartKind]: Cells<K> } = {
  hoses: [
    ['SIZE', ({ dash }) => formatDash(dash)],
    ['OD mm', ({ outsideDiameterMm }) => mm(outsideDiameterMm)],
    ['LEAST RADIUS mm', (h) => `${mm(h.minBendRadiusMm)} ${h.minBendRadiusDatum}`],
    ['kPa', ({ maxPressureKpa }) => formatNumber(maxPressureKpa, 0)],
    ['C', ({ maxTemperatureC }) => formatNumber(maxTemperatureC, 0)],
  ],
  ends: [
    ['SIZE', ({ dash }) => formatDash(dash)],
    ['SEAT', ({ seat }) => seat],
    ['BEND', ({ bendAngleDeg }) => `${bendAngleDeg}`],
    ['C mm', (end) => lengthsOf(end, cutOffMm)],
    ['DROP mm', (end) => lengthsOf(end, dropMm)],
    ['TURNS', ({ turning }) => turning],
  ],
  sleeves: [
    ['ID mm', ({ insideDiameterMm }) => mm(insideDiameterMm)],
    ['OD mm', ({ outsideDiameterMm }) => mm(outsideDiameterMm)],
    ['C', ({ maxTemperatureC }) => formatNumber(maxTemperatureC, 0)],
  ],
  adapters: [
    ['FORM', ({ form }) => form],
    ['IN THE PORT', ({ portSeat, portDash }) => `${portSeat} ${formatDash(portDash)}`],
    ['OFFERS', ({ seat, dash }) => `${seat} ${formatDash(dash)}`],
    ['BEND', ({ bendAngleDeg }) => `${bendAngleDeg}`],
    ['TURNS', ({ turning }) => turning],
  ],
  clamps: [
    ['HOLDS mm', ({ holdsFromMm, holdsToMm }) => `${mm(holdsFromMm)} to ${mm(holdsToMm)}`],
    ['STAND-OFF mm', ({ standOffMm }) => mm(standOffMm)],
    ['C', ({ maxTemperatureC }) => formatNumber(maxTemperatureC, 0)],
  ],
  rolls: [
    ['HOSE', ({ hose }) => hose],
    ['LEFT mm', ({ lengthMm }) => formatNumber(lengthMm, 0)],
    ['CURED', ({ cureDate }) => cureDate ?? ''],
    ['PLACE', ({ place }) => place ?? ''],
  ],
};

/** Every part table for a person at a terminal: what is in it, whose figures they are, what uses each part. */
export function partsTable(drawer: PartDrawer, kinds: readonly PartKind[] = PART_KINDS): string {
  const { name, exampleData } = drawer.project;
  const heading = [name, ...(exampleData ? ['EXAMPLE DATA: invented, not for cutting hose'] : [])];
  return [...heading, ...kinds.flatMap((kind) => kindLines(drawer, kind)), ''].join('\n');
}

function kindLines(drawer: PartDrawer, kind: PartKind): string[] {
  const sheets = drawer.sheets.filter((sheet) => sheet.kind === kind);
  const count = sheets.reduce((sum, { rows }) => sum + rows.length, 0);
  const title = `${PART_KIND_WORDS[kind].many.toUpperCase()}, ${count}`;
  if (count === 0) return ['', `${title}: no table names any`];
  const cells = CELLS[kind] as Cells<PartKind>;
  const headings = ['ID', ...cells.map(([word]) => word), 'FIGURES', 'USED BY'];
  return [
    '',
    title,
    ...sheets.flatMap((sheet) => [sheet.path, ...inColumns([headings, ...rowsOf(drawer, sheet, cells)])]),
  ];
}

function rowsOf(drawer: PartDrawer, sheet: PartSheet, cells: Cells<PartKind>): string[][] {
  return sheet.rows.map((row) => [
    row.id,
    ...cells.map(([, cell]) => cell(row)),
    row.provenance,
    partUses(drawer, sheet.kind, row.id).join(', '),
  ]);
}
