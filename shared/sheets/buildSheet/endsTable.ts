import type { EndPose } from '../../document/lay/schema.ts';
import { insertionDepthMm } from '../../document/parts/insertionDepth.ts';
import { END_MATERIAL_WORDS, JOINT_WORDS, PROVENANCE_WORDS } from '../../document/wording/partWords.ts';
import { formatDash, formatDegrees, formatNumber, formatTurn, type LengthWriter } from '../format/index.ts';
import type { SheetEnd } from '../input.ts';
import { type Block, stack } from '../layout/block.ts';
import { onTwoLines } from '../layout/onTwoLines.ts';
import { tableRows } from '../layout/table.ts';
import { heading } from '../layout/textBlock.ts';
import type { LaidSubject } from './subject.ts';

const SHARES = [0.085, 0.215, 0.33, 0.075, 0.13, 0.165] as const;
const TITLES = ['', 'port', 'hose end', 'bend', 'hose goes in', 'own clock at its port'] as const;

/** Both ends: what they are, where they go, how deep the hose goes in, how they stand at their port. */
export function endsTable({ paper, run, lay, write, widthMm }: LaidSubject): Block {
  const columns = TITLES.map((title, i) => ({ title, widthMm: widthMm * SHARES[i]!, bold: i === 0 }));
  const rows = [endRow('END A', run.a, lay.ends.a, write), endRow('END B', run.b, lay.ends.b, write)];
  const table = tableRows(paper, columns, rows);
  return stack([heading('Ends', widthMm), table.titles, ...table.rows]);
}

function endRow(letter: string, { port, end }: SheetEnd, pose: EndPose, write: LengthWriter): string[] {
  return [
    letter,
    `${port.name} (${port.id})\n${port.seat}, size ${formatDash(port.dash)}${adaptersText(pose)}`,
    `${end.name} (${end.id}). ${END_MATERIAL_WORDS[end.material]}, ${JOINT_WORDS[end.joint].toLowerCase()}, ${end.turning}.${crimpText(end)} ${PROVENANCE_WORDS[end.provenance]}: ${end.source}`,
    end.bendAngleDeg === 0 ? 'straight' : formatTurn(end.bendAngleDeg),
    onTwoLines(write.both(insertionDepthMm(end))),
    ownClock(end.bendAngleDeg, end.turning, pose),
  ];
}

/** What stands between the port and the end. */
function adaptersText({ adapters = [] }: EndPose): string {
  return adapters.length === 0 ? '' : `\non ${adapters.map(({ id }) => id).join(', ')}`;
}

/** Die, setting and finished diameter, as far as the table has them from the maker's card. */
function crimpText({ joint, crimpDie, crimpSetting, crimpFromMm, crimpToMm }: SheetEnd['end']): string {
  if (joint !== 'crimp') return '';
  const told = [
    ...(crimpDie === undefined ? [] : [`die ${crimpDie}`]),
    ...(crimpSetting === undefined ? [] : [`setting ${crimpSetting}`]),
    ...(crimpFromMm === undefined || crimpToMm === undefined
      ? []
      : [`finished ${formatNumber(crimpFromMm, 2)} to ${formatNumber(crimpToMm, 2)} mm on the flats`]),
  ];
  return told.length === 0 ? '' : ` Crimp: ${told.join(', ')}.`;
}

function ownClock(bendAngleDeg: number, turning: string, pose: EndPose): string {
  if (bendAngleDeg === 0) return 'none: straight';
  const how = turning === 'swivel' ? ', held while tightening' : ', fixed';
  return `${formatDegrees(pose.ownClockDeg)} clockwise from the port’s 12${how}`;
}
