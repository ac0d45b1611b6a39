import type { NutHands } from '../../document/lay/hands.ts';
import type { Finding, Severity } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { mouthPlace, SIDES, type Side, sideText } from './places.ts';

/**
 * Whether a wrench swings far enough at each nut, degrees. Where only hoses that can go on later are in the way, the order
 * of fitting is noted; where a crow-foot does it, that is to be decided; a hose of which neither nut can be turned by
 * anything forbids cutting.
 */
export function wrenchAccess(context: CheckContext): Finding[] {
  const { hands } = context.lay;
  if (hands === undefined) return [];
  const nuts = SIDES.flatMap((side) => (hands[side] === undefined ? [] : [{ side, nut: hands[side] }]));
  const asked = ruleValue(context.project, 'wrench-swing', context.run.run.id).value;
  const shut = nuts.length === 2 && nuts.every(({ nut }) => isShut(nut, asked));
  return nuts.flatMap(({ side, nut }) => judgeNut(context, side, nut, shut));
}

/** No wrench, no crow-foot, and no order of fitting helps. */
function isShut({ swing, alone, crowFoot }: NutHands, askedDeg: number): boolean {
  return Math.max(swing.widestDeg, alone?.widestDeg ?? 0, crowFoot?.widestDeg ?? 0) < askedDeg;
}

function judgeNut(context: CheckContext, side: Side, nut: NutHands, shut: boolean): Finding[] {
  const { project, run, lay } = context;
  const use = ruleValue(project, 'wrench-swing', run.run.id);
  const thing = nut.swing.inTheWay[0];
  return judge({
    check: 'wrenchAccess',
    run: run.run.id,
    use,
    sense: 'at-least',
    measured: nut.swing.widestDeg,
    unit: 'deg',
    at: mouthPlace(lay, side),
    ...(thing === undefined ? {} : { with: thing }),
    ...told(sideText(side), nut, use.value, shut),
  });
}

interface Told {
  readonly severity: Severity;
  readonly message: string;
  readonly mend: string;
}

function told(end: string, nut: NutHands, askedDeg: number, shut: boolean): Told {
  const { swing, alone, crowFoot, blockedBy } = nut;
  const room = swing.goesOn
    ? `A wrench on the ${nut.hexMm.toFixed(1)} mm nut of ${end} swings ${swing.widestDeg.toFixed(0)} degrees`
    : `No open jaw goes on the ${nut.hexMm.toFixed(1)} mm nut of ${end} from the side`;
  const names = swing.inTheWay.map((thing) => thing.part ?? thing.id).join(', ');
  const way = names === '' ? '' : `; in the way: ${names}`;
  if (blockedBy !== undefined && alone !== undefined)
    return {
      severity: 'note',
      message: `${room} once ${blockedBy.join(' and ')} ${blockedBy.length > 1 ? 'are' : 'is'} there, ${alone.widestDeg.toFixed(0)} degrees before.`,
      mend: `Tighten ${end} before ${blockedBy.join(' and ')} ${blockedBy.length > 1 ? 'go' : 'goes'} on.`,
    };
  if (crowFoot !== undefined && crowFoot.widestDeg >= askedDeg)
    return {
      severity: 'look',
      message: `${room}${way}. A crow-foot on an extension swings ${crowFoot.widestDeg.toFixed(0)} degrees.`,
      mend: 'A crow-foot; or an end of another angle or an adapter that brings the nut out; or take off first what is in the way.',
    };
  const neither = shut ? ' Nor can the nut of the other end be turned.' : '';
  return {
    severity: shut ? 'stop' : 'look',
    message: `${room}${way}, and no crow-foot on an extension does it.${neither}`,
    mend: 'Tighten it before the part goes in, or take off first what is in the way; an adapter or another end that brings the nut out; or the other end last.',
  };
}
