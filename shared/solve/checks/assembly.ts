import type { Finding } from '../../document/lay/schema.ts';
import type { End } from '../../document/parts/schema.ts';
import type { Support } from '../../document/project/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { lengthText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { placeText, SIDES, sideText } from './places.ts';

/** Whether the hose can be made up and put in as its data has it: the sleeve over the hose, the hose and one finished end through every hole that is stated. */
export function assembly(context: CheckContext): Finding[] {
  return [...sleeveGoesOver(context), ...context.run.run.supports.flatMap((support) => throughHole(context, support))];
}

function atLeast({ project, run }: CheckContext, rule: string) {
  const use = ruleValue(project, rule, run.run.id);
  return {
    check: 'assembly',
    run: run.run.id,
    use,
    sense: 'at-least',
    unit: 'mm',
  } as const;
}

function sleeveGoesOver(context: CheckContext): Finding[] {
  const { hose, sleeve } = context.run;
  if (sleeve === undefined) return [];
  const { insideDiameterMm } = sleeve;
  return judge({
    ...atLeast(context, 'sleeve-goes-over'),
    measured: insideDiameterMm - hose.outsideDiameterMm,
    severity: 'look',
    message: `The sleeve ${sleeve.name} is ${lengthText(insideDiameterMm)} inside, the hose ${lengthText(hose.outsideDiameterMm)} outside.`,
    mend: 'The next larger sleeve, or one that its maker lets stretch so far.',
  });
}

function throughHole(context: CheckContext, { id, kind, name = 'The pass-through', holeMm }: Support): Finding[] {
  const { run, lay } = context;
  const at = lay.supports.find((support) => support.id === id)?.at;
  if (kind !== 'pass-through' || holeMm === undefined || at === undefined) return [];
  const hole = `${name}, ${placeText(at)}: its hole is ${lengthText(holeMm)}`;
  const tooThick = judge({
    ...atLeast(context, 'hole-over-hose'),
    measured: holeMm - lay.outsideDiameterMm,
    severity: 'stop',
    at,
    message: `${hole}, the hose ${lengthText(lay.outsideDiameterMm)} thick there.`,
    mend: 'A larger hole, or a bulkhead fitting with a hose on each side.',
  });
  if (tooThick.length > 0) return tooThick;
  const [side, widthMm] = SIDES.map((one) => [one, endWidthMm(run[one].end)] as const).reduce((slim, other) =>
    other[1] < slim[1] ? other : slim,
  );
  return judge({
    ...atLeast(context, 'hole-over-end'),
    measured: holeMm - widthMm,
    severity: 'look',
    at,
    message: `${hole}; the slimmer end, ${sideText(side)}, is at least ${lengthText(widthMm)} across, so the finished hose does not go through.`,
    mend: 'Thread the hose through before its second end goes on, in the bay; or a split grommet in a larger hole; or a bulkhead fitting.',
  });
}

/** mm. What of an end must pass a hole at least: its socket, and its nut across the corners. What an elbow needs beyond that is not counted. */
function endWidthMm({ collarDiameterMm, hexMm = 0 }: End): number {
  return Math.max(collarDiameterMm, (hexMm * 2) / Math.sqrt(3));
}
