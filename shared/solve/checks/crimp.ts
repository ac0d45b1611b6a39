import type { Finding } from '../../document/lay/schema.ts';
import type { End } from '../../document/parts/schema.ts';
import { crimpVerdict } from '../../document/proof/crimpVerdict.ts';
import { ruleValue } from '../../document/rules/index.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { notStated } from './notStated.ts';
import { SIDES, type Side, sideText } from './places.ts';

/** The finished crimps as the bench read them: one reading past the end maker's limits and the hose is neither tested nor fitted. */
export function crimp(context: CheckContext): Finding[] {
  const read = context.run.run.asBuilt?.crimpMm;
  return SIDES.flatMap((side) => oneCrimp(context, side, read?.[side]));
}

function oneCrimp(context: CheckContext, side: Side, readingsMm: readonly number[] | undefined): Finding[] {
  if (readingsMm === undefined) return [];
  const { project, run } = context;
  const { end } = run[side];
  const verdict = crimpVerdict(end, readingsMm);
  if (verdict.outcome === 'not-known')
    return notStated(context, 'crimp-limits-known', {
      check: 'crimp',
      message: `${sideText(side)}: its crimp was measured, and its table says of no finished diameter.`,
      mend: "State crimp_from_mm and crimp_to_mm of the end, from its maker's card.",
    });
  return judge({
    check: 'crimp',
    run: run.run.id,
    use: ruleValue(project, 'crimp-diameter', run.run.id),
    sense: 'at-most',
    measured: Math.max(...verdict.readings.map(({ pastMm }) => pastMm)),
    unit: 'mm',
    severity: 'stop',
    message: `${sideText(side)}: ${verdict.words}`,
    mend: mendOf(end, readingsMm),
  });
}

/** What is too small was pressed too far and stays so. */
function mendOf({ crimpFromMm = 0 }: End, readingsMm: readonly number[]): string {
  return readingsMm.some((readMm) => readMm < crimpFromMm)
    ? 'Scrap: a crimp is never opened again. A new end on new hose.'
    : "Crimp it again to the maker's setting and measure again; while it reads too much it is not tested.";
}
