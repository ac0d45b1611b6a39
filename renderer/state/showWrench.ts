import type { Bench } from './bench.ts';
import { layOf } from './runState.ts';

/** mm. What of the bay is looked at round a nut. */
const SPAN_MM = 450;

/** Draws where a wrench swings at one end of the chosen hose, and looks there; `null` puts it away. */
export function showWrench({ session, document }: Pick<Bench, 'session' | 'document'>, side: 'a' | 'b' | null): void {
  const { open } = document.getState();
  const { run } = session.getState();
  const nut = side === null || open === null || run === null ? undefined : layOf(open, run)?.hands?.[side];
  session.set({ wrench: nut === undefined ? null : side });
  if (nut !== undefined) session.flyTo(nut.middle, SPAN_MM);
}

/** END A, END B, none, and round again; an end without a nut is passed over. */
export function nextWrench(bench: Pick<Bench, 'session' | 'document'>): void {
  const { session } = bench;
  const { wrench } = session.getState();
  const next = wrench === null ? (['a', 'b'] as const) : wrench === 'a' ? (['b'] as const) : [];
  session.set({ wrench: null });
  for (const side of next) if (session.getState().wrench === null) showWrench(bench, side);
}
