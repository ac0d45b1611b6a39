import type { Lay } from '../../../shared/document/lay/schema.ts';
import type { Run } from '../../../shared/document/project/schema.ts';
import { SUPPORT_WORDS } from '../../../shared/document/wording/bayWords.ts';
import { stretchOf } from '../../state/edits/lockEdits.ts';
import { supportName } from '../../state/edits/supportEdits.ts';
import { supportArc } from '../../state/supportPlaces.ts';
import { clockView } from '../runs/clockView.ts';
import type { Dress } from './dress.ts';

/** What is drawn on the straight hose, as sentences in the order of the hose; `tell` writes a length. */
export function marksInWords(
  lay: Lay,
  run: Run | undefined,
  { sleeve, collars }: Dress,
  tell: (mm: number) => string,
): readonly string[] {
  const placed = [
    ...(run?.supports ?? []).map((support) => ({
      at: supportArc(lay, support),
      words: supportName(run?.supports ?? [], support, SUPPORT_WORDS[support.kind]),
    })),
    ...lay.supports
      .filter(({ proposed }) => proposed)
      .map(({ kind, at }) => ({ at: at.arcLengthMm, words: `${SUPPORT_WORDS[kind]} that the lay asks for` })),
  ].map(({ at, words }) => ({ at, words: `${words} at ${tell(at)}` }));
  const locked = (run?.locks ?? []).map((lock) => {
    const { fromMm, toMm } = stretchOf(lay, lock);
    return { at: fromMm, words: `locked from ${tell(fromMm)} to ${tell(toMm)}` };
  });
  const over =
    sleeve === undefined
      ? []
      : [
          `sleeve over both collars, from ${tell(-sleeve.fromMm)} before shoulder A to ${tell(sleeve.toMm - lay.cutLengthMm)} past shoulder B`,
        ];
  return [
    `collar A to ${tell(collars.a.toMm)}`,
    ...[...placed, ...locked].sort((p, q) => p.at - q.at).map(({ words }) => words),
    `collar B from ${tell(collars.b.fromMm)}`,
    ...over,
    ...(lay.clock.kind === 'angle' ? [clockView('A', lay.clock.deg).words, clockView('B', lay.clock.deg).words] : []),
  ];
}
