import type { Finding } from '../../document/lay/schema.ts';
import { ruleValue } from '../../document/rules/index.ts';
import { lengthText } from '../../document/wording/quantityText.ts';
import type { CheckContext } from './check.ts';
import { judge } from './judge.ts';
import { mouthPlace, placeAt } from './places.ts';

/** The longest stretch, mm, between two things that hold the hose: mouths, clamps, pass-throughs; proposed ones count. */
export function clampSpacing({ project, run, lay }: CheckContext): Finding[] {
  const holds = [
    mouthPlace(lay, 'a').arcLengthMm,
    ...lay.supports.filter((s) => s.kind !== 'waypoint').map((s) => s.at.arcLengthMm),
    mouthPlace(lay, 'b').arcLengthMm,
  ].sort((p, q) => p - q);
  let longest = { from: holds[0] ?? 0, mm: 0 };
  holds.forEach((to, i) => {
    const from = holds[i - 1];
    if (from !== undefined && to - from > longest.mm) longest = { from, mm: to - from };
  });
  const use = ruleValue(project, 'clamp-spacing', run.run.id);
  const to = longest.from + longest.mm;
  return judge({
    check: 'clampSpacing',
    run: run.run.id,
    use,
    sense: 'at-most',
    measured: longest.mm,
    unit: 'mm',
    severity: 'look',
    at: placeAt(lay, longest.from + longest.mm / 2),
    message: `Nothing holds it for ${lengthText(longest.mm)}, from ${lengthText(longest.from)} to ${lengthText(to)} from shoulder A; a clamp is due every ${lengthText(use.value)}.`,
    mend: `Cushioned clamps at about ${duePlaces(longest.from, longest.mm, use.value).map(lengthText).join(' and ')} from shoulder A, not on a bend.`,
  });
}

/** Where clamps part a stretch into even ones of no more than what is due, mm from shoulder A. */
function duePlaces(fromMm: number, stretchMm: number, dueMm: number): number[] {
  const parts = Math.max(2, Math.ceil(stretchMm / dueMm));
  return Array.from({ length: parts - 1 }, (_, i) => fromMm + (stretchMm * (i + 1)) / parts);
}
