import type { Finding } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { lengthText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { SIDES, sideText } from './places.ts';

/** Whether the ends themselves have room where they stand: an elbow or a collar that stands in the bay cannot be fitted. */
export function endRoom({ project, run, lay }: CheckContext): Finding[] {
  const use = ruleValue(project, 'end-room', run.run.id);
  return SIDES.flatMap((side) => {
    const { room } = lay.ends[side];
    if (room === undefined) return [];
    return judge({
      check: 'endRoom',
      run: run.run.id,
      use,
      sense: 'at-least',
      limit: use.value,
      ruleLimit: use.rule.value,
      measured: room.roomMm,
      unit: 'mm',
      severity: room.roomMm < 0 ? 'stop' : 'look',
      at: { arcLengthMm: side === 'a' ? 0 : lay.cutLengthMm, point: room.point },
      message:
        room.roomMm < 0
          ? `The end at ${sideText(side)} stands ${lengthText(-room.roomMm)} in ${room.part}, taken at its collar's diameter.`
          : `The end at ${sideText(side)} has ${lengthText(room.roomMm)} of room at ${room.part}.`,
      mend: 'Turn its own clock, or take an end of another angle.',
    });
  });
}
