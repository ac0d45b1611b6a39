import type { Finding } from '../../document/lay/schema.ts';
import type { End } from '../../document/parts/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { lengthText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { endPlace, SIDES, sideText } from './places.ts';

/** Whether the ends themselves, and the adapters under them, have room where they stand: an elbow or a collar that stands in the bay cannot be fitted. */
export function endRoom({ project, run, lay }: CheckContext): Finding[] {
  const use = ruleValue(project, 'end-room', run.run.id);
  return SIDES.flatMap((side) => {
    const { room } = lay.ends[side];
    if (room === undefined) return [];
    const what = room.adapter === undefined ? 'The end' : `The adapter ${room.adapter}`;
    return judge({
      check: 'endRoom',
      run: run.run.id,
      use,
      sense: 'at-least',
      measured: room.roomMm,
      unit: 'mm',
      severity: room.roomMm < 0 ? 'stop' : 'look',
      at: endPlace(lay, side, room.point),
      message:
        room.roomMm < 0
          ? `${what} at ${sideText(side)} stands ${lengthText(-room.roomMm)} in ${room.part}, taken at its ${room.adapter === undefined ? "collar's" : 'largest'} diameter.`
          : `${what} at ${sideText(side)} has ${lengthText(room.roomMm)} of room at ${room.part}.`,
      mend:
        room.adapter === undefined
          ? `${turnText(run[side].end)}take an end of another angle.`
          : 'Turn its clock, or take an adapter of another angle or a longer one.',
    });
  });
}

/** What can be done with the end that is there, to go on after with what else can. */
function turnText({ turning, turnFromDeg: from, turnToDeg: to }: End): string {
  if (turning === 'fixed') return 'It does not turn on its port: ';
  const range = turning === 'range' ? ` within the ${from} to ${to} degrees that it turns` : '';
  return `Turn its own clock${range}, or `;
}
