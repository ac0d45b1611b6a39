import { sleeveOf } from '../../document/lay/sleeveOf.ts';
import { cutSquarenessMm, en853Tolerance, lengthTolerance } from '../../document/rules/lengthTolerance.ts';
import { PROVENANCE_WORDS } from '../../document/wording/partWords.ts';
import { CUT_CONVENTION, overallConvention } from '../bench/lengthConvention.ts';
import {
  formatDash,
  formatDegrees,
  formatMm,
  formatNumber,
  formatPressure,
  formatRadius,
  formatSlack,
  formatTemperature,
  formatTurn,
} from '../format/index.ts';
import { type Block, beside, space, stack } from '../layout/block.ts';
import { FORBID, GREY, TYPE } from '../layout/style.ts';
import { heading, textBlock } from '../layout/textBlock.ts';
import type { LaidSubject } from './subject.ts';

const GUTTER_MM = 7;
const VALUE_SHARE = 0.38;

/** What to cut, large, with the overall length it comes from; beside it the hose and what the lay reached. */
export function cutBlock(subject: LaidSubject): Block {
  const left = (subject.widthMm - GUTTER_MM) * 0.56;
  const right = subject.widthMm - GUTTER_MM - left;
  const title = subject.verdict.mayCut ? 'What to cut' : 'Not to be cut: for information only';
  return beside([
    { atMm: 0, block: stack([heading(title, left), cutNumbers(subject, left)]) },
    {
      atMm: left + GUTTER_MM,
      block: stack(
        [stack([heading('Hose', right), space(0.6)]), ...hoseFacts(subject).map((f) => factBlock(subject, f, right))],
        0.7,
      ),
    },
  ]);
}

function cutNumbers(subject: LaidSubject, widthMm: number): Block {
  const { paper } = subject;
  const small = { sizePt: TYPE.small };
  return stack([
    bigNumber(subject),
    textBlock(
      paper,
      `Cut length is ${CUT_CONVENTION}. Rounded up: long can be trimmed. ${toleranceText(subject)}`,
      widthMm,
      small,
    ),
    space(1.2),
    ...lengthFacts(subject).map((f) => factBlock(subject, f, widthMm, 0.32)),
    space(1.2),
    textBlock(
      paper,
      `Overall is ${overallConvention(subject.run)}. Overall less C of END A and C of END B leaves the cut length.`,
      widthMm,
      small,
    ),
  ]);
}

function bigNumber({ lay, verdict, write }: LaidSubject): Block {
  return {
    heightMm: 24,
    draw: (page, x, y) => {
      page.text(formatMm(lay.cutLengthMm, 'up'), x - 0.6, y + 11, { sizePt: TYPE.huge, bold: true });
      page.text(write.inches(lay.cutLengthMm, 'up'), x, y + 20.4, { sizePt: TYPE.head + 3, bold: true });
      if (verdict.mayCut) return;
      for (const down of [7.1, 18]) page.line(x - 1.5, y + down, x + 68, y + down, { line: FORBID, widthMm: 1 });
    },
  };
}

function toleranceText({ lay, run, write }: LaidSubject): string {
  const { applies, toleranceMm, source } = lengthTolerance(lay.cutLengthMm, run.hose.core);
  const squareMm = cutSquarenessMm(run.hose.dash);
  const square = squareMm === undefined ? '' : ` Cut square within ${write.both(squareMm, 'down')}.`;
  if (!applies) return `Tolerance: no table found for convoluted hose; ask its maker.${square}`;
  const other = en853Tolerance(lay.overallLengthMm, run.hose.dash);
  return (
    `Tolerance ± ${formatMm(toleranceMm, 'down')} (± ${write.inches(toleranceMm, 'down')}), ${source}.${square} ` +
    `Others: overall +${formatMm(other.overMm, 'down')}, -${formatMm(other.underMm, 'down')} (${other.source}).`
  );
}

type Fact = readonly [name: string, value: string];

function lengthFacts({ lay, run, write }: LaidSubject): Fact[] {
  const facts: Fact[] = [
    ['Overall', write.both(lay.overallLengthMm)],
    ['C of END A', write.both(lay.cutOffMm.a)],
    ['C of END B', write.both(lay.cutOffMm.b)],
  ];
  const sleeve = sleeveOf(run, lay);
  if (sleeve)
    facts.push(
      ['Sleeve, at least', write.cut(sleeve.cutLengthMm)],
      [
        '',
        `estimate: ${formatNumber(sleeve.turnedDeg, 0)}° of bends take ${formatMm(sleeve.allowanceMm, 'up')}; ${formatMm(sleeve.stiffMm, 'up')} if its wall does not stretch. Trim it on the hose`,
      ],
    );
  return facts;
}

function hoseFacts({ lay, run }: LaidSubject): Fact[] {
  const { hose, sleeve } = run;
  const datum = hose.minBendRadiusDatum === 'inside' ? 'inside of bend' : 'centreline';
  return [
    ['Hose', `${hose.name}, ${formatDash(hose.dash)} (${hose.id})`],
    ['Outside, bore', `${formatMm(hose.outsideDiameterMm)}, ${formatMm(hose.insideDiameterMm)}`],
    ...(sleeve ? [['Sleeve', `${sleeve.name} (${sleeve.id})`] as const] : []),
    [
      'Least radius',
      `${formatRadius(lay.minRadius.radiusMm)} at the centreline; limit ${formatMm(lay.minRadius.limitMm, 'up')}`,
    ],
    ['Maker’s limit', `${formatMm(hose.minBendRadiusMm)}, measured to the ${datum}`],
    ['Live, taut', `${formatMm(lay.liveLengthMm)}, ${formatMm(lay.tautLengthMm)}; slack ${formatSlack(lay.slack)}`],
    ['Rated', `${formatPressure(hose.maxPressureKpa, 'down')}, to ${formatTemperature(hose.maxTemperatureC, 'down')}`],
    ['Clock', clockText(lay)],
    ['Figures', `${PROVENANCE_WORDS[hose.provenance]}: ${hose.source}`],
  ];
}

function clockText({ clock }: LaidSubject['lay']): string {
  if (clock.kind === 'free') return 'free: no angle to set';
  return `${formatDegrees(clock.deg)} ± ${formatTurn(clock.toleranceDeg)}, see the clock card`;
}

function factBlock({ paper }: LaidSubject, [name, value]: Fact, widthMm: number, share = VALUE_SHARE - 0.1): Block {
  const at = widthMm * share;
  const look = { sizePt: TYPE.small };
  return beside([
    { atMm: 0, block: textBlock(paper, name, at, { ...look, colour: GREY }) },
    { atMm: at, block: textBlock(paper, value, widthMm - at, look) },
  ]);
}
