import type { Heat } from './heat.ts';

/**
 * How far the hose stays under its own limit where its liner gets hottest, running or in hot soak, by the likely value, deg C;
 * below 0 = over it. An estimate, as the temperatures are.
 */
export function heatRoomC({ linerLimitC, running, soak }: Pick<Heat, 'linerLimitC' | 'running' | 'soak'>): number {
  return linerLimitC - Math.max(...running.liner.likely, ...soak.liner.likely);
}
