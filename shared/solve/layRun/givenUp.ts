import type { Lay } from '../../document/lay/schema.ts';
import type { Broken } from '../character/brokenBy.ts';
import type { RunSetting } from './runSetting.ts';

/** What the service or the project asks and a lay does not keep, each in one sentence with its number and what would mend it. */
export function givenUpOf(setting: RunSetting, broken: readonly Broken[]): NonNullable<Lay['givenUp']> {
  return broken.map((b) => ({ wish: b.wish, reason: sentence(setting, b), at: b.at }));
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
    case 'one-plane':
      return `from ${from === 'a' ? 'END A' : from} the hose does not lie in one plane: ${rounded(measured)} mm off it; it changes its plane ${where}, where a clamp belongs`;
  }
}

function rounded(value: number): string {
  return (Math.round(value * 10) / 10).toString();
}
