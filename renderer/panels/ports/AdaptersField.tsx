import { distance } from '../../../shared/base/vec3.ts';
import type { Adapter } from '../../../shared/document/parts/schema.ts';
import type { AdapterUse, Port, Project } from '../../../shared/document/project/schema.ts';
import { seatWords } from '../../../shared/document/wording/seatWords.ts';
import { formatDash } from '../../../shared/sheets/format/index.ts';
import {
  adaptersFor,
  addAdapter,
  addOtherOutlet,
  chooseAdapter,
  moveAdapter,
  removeAdapter,
  seatBelow,
  swapOutlet,
  turnAdapter,
} from '../../state/edits/adapterEdits.ts';
import { portSeat } from '../../state/portSeat.ts';
import { useBench, useDocument } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { Choice } from '../../widgets/Choice.tsx';
import { NumberField } from '../../widgets/NumberField.tsx';
import { Length } from '../Length.tsx';

/** What is screwed on a port before the hose end, from the part outwards, and the seat that comes of it. */
export function AdaptersField({ port }: { port: Port }) {
  const { document } = useBench();
  const table = useDocument((state) => state.open?.tables.adapters) ?? [];
  const uses = port.adapters ?? [];
  const outermost = seatBelow(port, uses.length, table);
  const next = adaptersFor(table, outermost);
  return (
    <section className="adapters" aria-label={`Adapters on ${port.name}`}>
      <h3>Adapters</h3>
      {uses.length === 0 && <p className="teach">None: the hose end goes straight on this port.</p>}
      {uses.length > 0 && (
        <ol className="adapter-stack">
          {uses.map((use, place) => (
            // A place in the stack is what is edited; the same adapter may stand in it twice.
            // biome-ignore lint/suspicious/noArrayIndexKey: places have no other name
            <AdapterRow key={place} port={port} place={place} use={use} table={table} />
          ))}
        </ol>
      )}
      {uses.length > 0 && <SeatOnTop port={port} table={table} />}
      {table.length === 0 ? (
        <p className="teach">No adapter is in the part tables yet: add one under Parts.</p>
      ) : (
        <Button
          onPress={() => {
            const adapter = next[0]?.adapter;
            if (adapter !== undefined)
              document.edit(`adapter on ${port.name}`, (now) => addAdapter(now, port.id, adapter));
          }}
        >
          {uses.length === 0 ? 'Add an adapter' : 'Add another'}
        </Button>
      )}
    </section>
  );
}

/** Thread, size and place of what the hose end goes on. */
function SeatOnTop({ port, table }: { port: Port; table: readonly Adapter[] }) {
  const seat = portSeat(port, table).port;
  const [x, y, z] = seat.axis.map((v) => v.toFixed(2));
  return (
    <p className="teach" role="status">
      The hose end goes on {formatDash(seat.dash)} {seatWords(seat.seat)},{' '}
      <Length mm={distance(port.seatPoint, seat.seatPoint)} /> from the port’s own seat, facing {x}, {y}, {z}.
    </p>
  );
}

interface AdapterRowProps {
  readonly port: Port;
  readonly place: number;
  readonly use: AdapterUse;
  readonly table: readonly Adapter[];
}

function AdapterRow({ port, place, use, table }: AdapterRowProps) {
  const { document, hand } = useBench();
  const adapter = table.find(({ id }) => id === use.adapter);
  const name = adapter?.name ?? use.adapter;
  const edit = (what: string, change: (project: Project) => Project, join = false): void =>
    document.edit(`${what} on ${port.name}`, change, join);
  const last = (port.adapters ?? []).length - 1;
  return (
    <li className="adapter">
      <Choice
        label={`Adapter ${place + 1}`}
        value={use.adapter}
        options={adaptersFor(table, seatBelow(port, place, table)).map(({ adapter: one, fits }) => ({
          value: one.id,
          label: fits ? one.name : `${one.name}: does not fit here`,
        }))}
        onChoose={(id) => {
          const chosen = table.find((one) => one.id === id);
          if (chosen !== undefined) edit('adapter', (now) => chooseAdapter(now, port.id, place, chosen));
        }}
      />
      {adapter?.form === 'tee' && (
        <Choice
          label={`Outlet of adapter ${place + 1}`}
          value={use.outlet}
          options={[
            { value: 'straight', label: 'straight on' },
            { value: 'branch', label: 'branch' },
          ]}
          onChoose={() => edit('outlet', (now) => swapOutlet(now, port.id, place))}
        />
      )}
      {adapter !== undefined && (adapter.bendAngleDeg > 0 || adapter.form === 'tee') && (
        <AdapterClockField port={port} place={place} use={use} adapter={adapter} />
      )}
      <div className="support-buttons">
        {adapter?.form === 'tee' && (
          <Button
            onPress={() => {
              let other = port.id;
              edit('other outlet', (now) => {
                const added = addOtherOutlet(now, port.id, place);
                other = added.port;
                return added.project;
              });
              hand.set({ port: other });
            }}
          >
            Port on its other outlet
          </Button>
        )}
        {place > 0 && (
          <Button
            name={`Move ${name} nearer to the part`}
            onPress={() => edit('order of adapters', (now) => moveAdapter(now, port.id, place, -1))}
          >
            Nearer
          </Button>
        )}
        {place < last && (
          <Button
            name={`Move ${name} further from the part`}
            onPress={() => edit('order of adapters', (now) => moveAdapter(now, port.id, place, 1))}
          >
            Further
          </Button>
        )}
        <Button
          name={`Remove ${name} from ${port.name}`}
          onPress={() => edit('remove adapter', (now) => removeAdapter(now, port.id, place))}
        >
          Remove
        </Button>
      </div>
    </li>
  );
}

interface AdapterClockProps extends Omit<AdapterRowProps, 'table'> {
  readonly adapter: Adapter;
}

/** One clock, or, of a taper thread, between which clocks it may come tight: the hose then fits at all of them. */
function AdapterClockField({ port, place, use, adapter }: AdapterClockProps) {
  const { document } = useBench();
  const what = `clock of adapter ${place + 1}`;
  const turn = (clock: Parameters<typeof turnAdapter>[3], join: boolean): void =>
    document.edit(`${what} on ${port.name}`, (now) => turnAdapter(now, port.id, place, clock), join);
  const range = use.clockRangeDeg;
  const field = (label: string, value: number, low: number, high: number, set: (deg: number) => void) => (
    <NumberField label={label} unit="°" value={value} low={low} high={high} step={5} decimals={0} onSet={set} />
  );
  return (
    <>
      {adapter.turning === 'taper' && (
        <label className="check">
          <input
            type="checkbox"
            checked={range !== undefined}
            onChange={(event) => {
              const middle = range === undefined ? (use.clockDeg ?? 0) : (range[0] + range[1]) / 2;
              turn(event.target.checked ? { clockRangeDeg: [middle - 45, middle + 45] } : { clockDeg: middle }, false);
            }}
          />
          Not tight yet: it may come tight anywhere in a range, and the hose must fit at all of it
        </label>
      )}
      {range === undefined ? (
        field(`Clock of adapter ${place + 1}`, use.clockDeg ?? 0, -360, 360, (deg) => turn({ clockDeg: deg }, true))
      ) : (
        <div className="field-pair">
          {field('Tight from', range[0], Math.max(-360, range[1] - 360), range[1], (from) =>
            turn({ clockRangeDeg: [from, range[1]] }, true),
          )}
          {field('to', range[1], range[0], Math.min(720, range[0] + 360), (to) =>
            turn({ clockRangeDeg: [range[0], to] }, true),
          )}
        </div>
      )}
      <p className="teach">
        From the 12 o’clock of what it is screwed on, clockwise for an eye behind the part that looks out along the
        axis.
      </p>
    </>
  );
}
