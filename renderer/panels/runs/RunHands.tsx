import { fittingOrder } from '../../../shared/document/lay/fittingOrder.ts';
import type { NutHands } from '../../../shared/document/lay/hands.ts';
import type { Lay, LayReport } from '../../../shared/document/lay/schema.ts';
import type { Project } from '../../../shared/document/project/schema.ts';
import { directionWords, secondWords, swingWords, thingName } from '../../../shared/document/wording/handWords.ts';
import { formatMm, formatNumber } from '../../../shared/sheets/format/index.ts';
import { showWrench } from '../../state/showWrench.ts';
import { useBench, useSession } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { Value } from './Value.tsx';

interface Shown {
  readonly lay: Lay;
  readonly report: LayReport | null;
  readonly project: Project;
}

/** Whether hands get at the hose: each nut's wrench, what goes on after it, and where a hand reaches. */
export function RunHands({ lay, report, project }: Shown) {
  const { hands } = lay;
  if (hands === undefined) return null;
  const nameOf = (id: string): string => project.runs.find((run) => run.id === id)?.name ?? id;
  const first = report === null ? [] : (fittingOrder(report).after[lay.run] ?? []);
  const mirrors = hands.places.filter(({ by }) => by === 'mirror');
  return (
    <section aria-label="Hands">
      <h3>Hands</h3>
      <dl className="values">
        {hands.a !== undefined && <NutValue side="a" nut={hands.a} nameOf={nameOf} />}
        {hands.b !== undefined && <NutValue side="b" nut={hands.b} nameOf={nameOf} />}
        {hands.before.length > 0 && (
          <Value name="Goes on before" note="they stand where its wrench goes">
            {hands.before.map(nameOf).join(', ')}
          </Value>
        )}
        {first.length > 0 && <Value name="Goes on after">{first.map(nameOf).join(', ')}</Value>}
        {hands.places.length > 0 && (
          <Value
            name="A hand comes to"
            note={mirrors
              .map(({ at, why }) => `mirror: ${why}, ${formatMm(at.arcLengthMm)} from shoulder A`)
              .join('; ')}
          >
            <span className="figure">
              {hands.places.length - mirrors.length} of {hands.places.length}
            </span>{' '}
            places to look over
          </Value>
        )}
      </dl>
      <p className="teach">{hands.basis.map((line) => `Taken: ${line}.`).join(' ')}</p>
    </section>
  );
}

interface NutShown {
  readonly side: 'a' | 'b';
  readonly nut: NutHands;
  readonly nameOf: (id: string) => string;
}

function NutValue({ side, nut, nameOf }: NutShown) {
  const bench = useBench();
  const shown = useSession((state) => state.wrench === side);
  const end = `END ${side.toUpperCase()}`;
  const { swing, alone } = nut;
  const points = swing.middle !== undefined && swing.widestDeg < 360 ? directionWords(swing.middle) : '';
  const ways = swing.inTheWay.map((thing) => (thing.kind === 'run' ? nameOf(thing.id) : thingName(thing)));
  const notes = [
    `${formatNumber(nut.hexMm, 1)} mm hex${nut.hexAssumed ? ', assumed' : ''}`,
    points === '' ? '' : `handle ${points}`,
    alone === undefined ? '' : `${Math.floor(alone.widestDeg)}° with no other hose there`,
    ways.length === 0 ? '' : `in the way: ${ways.join(', ')}`,
    nut.second === undefined ? '' : `second wrench: ${secondWords(nut)}`,
  ];
  return (
    <Value name={`Wrench at ${end}`} note={notes.filter((note) => note !== '').join('; ')}>
      <span className="figure">{swingWords(nut)}</span>
      {swing.goesOn && ' of swing '}
      {swing.goesOn && (
        <Button
          look="quiet"
          pressed={shown}
          name={`Show in the bay where a wrench swings at ${end}`}
          hint="Key Shift W"
          onPress={() => showWrench(bench, shown ? null : side)}
        >
          Show
        </Button>
      )}
    </Value>
  );
}
