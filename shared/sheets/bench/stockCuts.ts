import type { Roll } from '../../document/parts/schema.ts';
import { type CutPlan, cutPlan, USUAL_KERF_MM, type WantedCut } from '../../document/stock/cutPlan.ts';
import type { CutListInput } from '../input.ts';
import { cutVerdict, layOf } from './cutVerdict.ts';

/** The cuts of a whole job from what lies on the shelf. */
export interface StockCuts {
  readonly kerfMm: number;
  readonly hoses: readonly { readonly hose: string; readonly name: string; readonly plan: CutPlan }[];
  /** runs that may not be cut, with the reason; nothing is set aside for them */
  readonly leftOut: readonly { readonly run: string; readonly reason: string }[];
}

type StockInput = Pick<CutListInput, 'report' | 'runs' | 'currentInputHash' | 'currentRunHashes'>;

/**
 * From which roll or offcut each laid hose is cut, kind of hose by kind of hose (see `cutPlan` for what is best). Lengths are those of the cut
 * list, rounded up to 0.1 mm. A run that the cut list forbids is left out and said. `only` picks runs by id; kerfMm: 0 or more.
 */
export function stockCuts(
  input: StockInput,
  rolls: readonly Roll[],
  only?: readonly string[],
  kerfMm = USUAL_KERF_MM,
): StockCuts {
  const runs = input.runs.filter(({ run }) => only === undefined || only.includes(run.id));
  const verdicts = runs.map(({ run }) => ({ run: run.id, verdict: cutVerdict(input, run.id) }));
  const leftOut = verdicts
    .filter(({ verdict }) => !verdict.mayCut)
    .map(({ run, verdict }) => ({ run, reason: verdict.reasons.join(' | ') }));
  const cut = runs.filter(({ run }) => !leftOut.some((left) => left.run === run.id));
  const kinds = [...new Map(cut.map(({ hose }) => [hose.id, hose.name]))];
  return {
    kerfMm,
    leftOut,
    hoses: kinds.map(([hose, name]) => {
      const wanted = cut.filter((run) => run.hose.id === hose).map(({ run }) => wantedOf(input, run.id));
      const stock = rolls.filter((roll) => roll.hose === hose);
      return { hose, name, plan: cutPlan(wanted, stock, kerfMm) };
    }),
  };
}

function wantedOf({ report }: StockInput, run: string): WantedCut {
  const tenths = (layOf(report, run)?.cutLengthMm ?? 0) * 10;
  // A sum that comes out a hair above a whole tenth is that tenth.
  return { run, lengthMm: Math.ceil(Number(tenths.toFixed(6))) / 10 };
}

/** What must be said of a plan beside its table: what no piece holds, what is left out, how sure it is. */
export function stockWords({ hoses, leftOut, kerfMm }: StockCuts): string[] {
  return [
    `Every cut takes ${kerfMm} mm, if the wheel is so wide. Offcuts go first, then the oldest hose.`,
    ...hoses.flatMap(({ name, plan }) => [
      ...plan.notHeld.map(
        ({ run, lengthMm }) => `${run} needs ${lengthMm.toFixed(1)} mm of ${name}: no roll or offcut has that left.`,
      ),
      ...(plan.proven ? [] : [`${name}: too many ways to look through all of them; another may waste less.`]),
    ]),
    ...leftOut.map(({ run, reason }) => `${run} is not cut: ${reason}`),
  ];
}
