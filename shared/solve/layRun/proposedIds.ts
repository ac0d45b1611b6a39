import type { Route } from './routeRun.ts';
import type { RunSetting } from './runSetting.ts';

/** Ids for so many more proposed clamps, none of which a support of the run, a station of the route or another clamp has. */
export function proposedIds(
  { supports }: Pick<RunSetting, 'supports'>,
  { stations }: Pick<Route, 'stations'>,
  clamps: readonly { readonly id: string }[],
  count: number,
): string[] {
  const taken = new Set([...supports, ...stations, ...clamps].map(({ id }) => id));
  const ids: string[] = [];
  for (let number = 1; ids.length < count; number++) {
    const id = `proposed-${number}`;
    if (!taken.has(id)) ids.push(id);
  }
  return ids;
}
