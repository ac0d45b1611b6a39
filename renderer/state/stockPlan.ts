import { type CutPlan, cutPlan, USUAL_KERF_MM } from '../../shared/document/stock/cutPlan.ts';
import type { OpenDocument } from './documentStore.ts';
import { layOf, runState } from './runState.ts';

/** From which pieces on the shelf the hoses of a job are cut. */
export interface StockPlan {
  readonly kerfMm: number;
  readonly hoses: readonly { readonly hose: string; readonly name: string; readonly plan: CutPlan }[];
  /** runs that nothing is set aside for: not laid, changed since, or forbidden to be cut */
  readonly leftOut: readonly string[];
  /** runs that are cut already */
  readonly cut: readonly string[];
}

/**
 * The stock plan of what is still to be cut, kind of hose by kind: the same search over the same lengths as on paper, rounded
 * up to 0.1 mm. A hose whose measured cut is written down lies on the bench already.
 */
export function stockPlan(open: OpenDocument): StockPlan {
  const { runs } = open.history.present;
  const cut = runs.filter(({ asBuilt }) => asBuilt?.cutLengthMm !== undefined).map(({ id }) => id);
  const toCut = runs.filter(({ id }) => !cut.includes(id));
  const mayCut = toCut.filter(({ id }) => ['clean', 'look'].includes(runState(open, id)));
  const kinds = [...new Set(mayCut.map(({ hose }) => hose))];
  return {
    kerfMm: USUAL_KERF_MM,
    cut,
    leftOut: toCut.filter((run) => !mayCut.includes(run)).map(({ id }) => id),
    hoses: kinds.map((hose) => {
      const wanted = mayCut
        .filter((run) => run.hose === hose)
        .map(({ id }) => ({ run: id, lengthMm: sawMm(open, id) }));
      const stock = open.tables.rolls.filter((roll) => roll.hose === hose);
      const name = open.tables.hoses.find(({ id }) => id === hose)?.name ?? hose;
      return { hose, name, plan: cutPlan(wanted, stock, USUAL_KERF_MM) };
    }),
  };
}

/** Cut length of a run, mm, up to the next tenth; a sum that comes out a hair above a whole tenth is that tenth. */
function sawMm(open: OpenDocument, run: string): number {
  return Math.ceil(Number(((layOf(open, run)?.cutLengthMm ?? 0) * 10).toFixed(6))) / 10;
}
