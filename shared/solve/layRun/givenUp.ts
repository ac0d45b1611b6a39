import type { Lay } from '../../document/lay/schema.ts';
import type { Broken } from '../character/brokenBy.ts';
import type { RunSetting } from './runSetting.ts';

/** What the service or the project asks and a lay does not keep, each in one sentence with its number and what would mend it. */
export function givenUpOf(setting: RunSetting, broken: readonly Broken[]): NonNullable<Lay['givenUp']> {
  return broken.map((b) => ({ wish: b.wish, reason: sentence(setting, b), at: b.at }));
}

/** A lay that goes its own way beside hoses of its bundle: said, with where it comes nearest to one of them. */
export function withApart(lay: Lay, from: readonly string[]): Lay {
  const near = lay.clearances
    .filter((c) => c.to.kind === 'run' && from.includes(c.to.id))
    .sort((p, q) => p.clearanceMm - q.clearanceMm)[0];
  const middle = Math.floor(lay.centreline.points.length / 2);
  const at = near?.at ?? {
    arcLengthMm: lay.centreline.arcLengthMm[middle] ?? 0,
    point: lay.centreline.points[middle] ?? lay.ends.a.shoulderPoint,
  };
  const nearest = near === undefined ? '' : `; it comes within ${rounded(near.clearanceMm)} mm of ${near.to.id}`;
  const reason = `no clean way beside ${from.join(' or ')} of its bundle was found, so it goes its own way${nearest}`;
  return { ...lay, givenUp: [...(lay.givenUp ?? []), { wish: 'bundle', reason, at }] };
}

function sentence({ character }: RunSetting, { wish, measured, at, from }: Broken): string {
  const where = `${rounded(at.arcLengthMm)} mm from shoulder A`;
  switch (wish) {
    case 'fall':
      return `no hose found falls enough all the way: this one falls ${rounded(measured)} degrees ${where}`;
    case 'no-crest':
      return character.crest?.forced === true
        ? `an end faces upwards, so the hose has a high point whatever its way: ${rounded(measured)} mm high ${where}; it needs a bleed there, or another end angle`
        : `a hose without a high point was not found; it needs a bleed ${where}, where it stands ${rounded(measured)} mm over what is beside it`;
    case 'calm-suction':
      return `no hose found keeps bends of ${rounded(character.calm?.radiusMm ?? 0)} mm before the pump: this one bends to ${rounded(measured)} mm ${where}`;
    case 'bundle':
      return 'it does not lie beside the hoses of its bundle';
    case 'one-plane':
      return `from ${from === 'a' ? 'END A' : from} the hose does not lie in one plane: ${rounded(measured)} mm off it; it changes its plane ${where}, where a clamp belongs`;
  }
}

function rounded(value: number): string {
  return (Math.round(value * 10) / 10).toString();
}
