import { curveLengthMm } from '../../geometry/cubicCurve.ts';
import { type Broken, brokenBy, type ShapeLine } from '../character/brokenBy.ts';
import { hasCharacter } from '../character/character.ts';
import { centrelineOf } from './centreline.ts';
import type { Shape } from './relaxRoute.ts';
import type { RunSetting } from './runSetting.ts';

/** A relaxed shape as its character is read from it. */
export function shapeLineOf(setting: RunSetting, shape: Shape): ShapeLine {
  return {
    ...centrelineOf(shape.curve),
    a: { way: shape.a.body.slice(0, -2) },
    b: { way: shape.b.body.slice(0, -2) },
    mouthsMm: {
      a: setting.a.end.shoulderToMouthMm,
      b: curveLengthMm(shape.curve) - setting.b.end.shoulderToMouthMm,
    },
    holds: shape.holds
      .map(({ id, proposed }, i) => ({ id, proposed, atMm: shape.holdsAtMm[i] as number }))
      .sort((x, y) => x.atMm - y.atMm),
  };
}

/** What of a run's character a shape breaks, asked or given up. */
export function brokenByShape(setting: RunSetting, shape: Shape): Broken[] {
  if (!hasCharacter(setting.character)) return [];
  return brokenBy(setting.character, shapeLineOf(setting, shape), setting.minRadiusMm);
}

/** Whether the ends as they stand break it, whatever the way of the hose. */
export function isForced({ character }: RunSetting, { wish }: Broken): boolean {
  return wish === 'no-crest' && character.crest?.forced === true;
}
