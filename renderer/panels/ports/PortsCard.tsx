import { useStore } from 'zustand';
import type { Port, Project } from '../../../shared/document/project/schema.ts';
import { seatWords } from '../../../shared/document/wording/seatWords.ts';
import { formatDash } from '../../../shared/sheets/format/index.ts';
import { runsAt } from '../../state/edits/portEdits.ts';
import { useBench, useDocument } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { useShownWhen } from '../useShownWhen.ts';
import { PortFields } from './PortFields.tsx';

const PORT_SPAN_MM = 320;

/** Every port; choosing one flies to it and opens its values. New ones are put on the bay with a click. */
export function PortsCard() {
  const { hand, onBay } = useBench();
  const project = useDocument((state) => state.open?.history.present ?? null);
  const hasBay = useDocument((state) => state.open?.bay !== null);
  const putting = useStore(hand, ({ tool }) => tool.kind === 'seat' && tool.port === null);
  const chosen = useStore(hand, (state) => state.port);
  if (project === null) return null;
  return (
    <article className="slip card" aria-labelledby="ports-title">
      <div className="slip-head">
        <h2 id="ports-title">Ports</h2>
        <Button
          look="main"
          disabled={!hasBay}
          pressed={putting}
          hint="Key o"
          onPress={() => hand.take(putting ? { kind: 'none' } : { kind: 'seat', port: null })}
        >
          New port
        </Button>
      </div>
      <p className="teach">
        Click by the round rim of a bore, a tube or a union: its middle and direction are taken. Where nothing is round
        the surface’s own direction is. Or{' '}
        <button type="button" className="text-button" disabled={!hasBay} onClick={onBay.addByNumbers}>
          put one in the middle of the bay
        </button>{' '}
        and type its place.
      </p>
      {project.ports.length === 0 ? (
        <p className="teach">No port yet. A port is where a hose joins: its seat, its axis and its 12 o’clock.</p>
      ) : (
        <ul className="ports" aria-label="Ports">
          {project.ports.map((port, i) => (
            <PortRow key={port.id} port={port} number={i + 1} project={project} chosen={port.id === chosen} />
          ))}
        </ul>
      )}
    </article>
  );
}

interface PortRowProps {
  readonly port: Port;
  readonly number: number;
  readonly project: Project;
  readonly chosen: boolean;
}

function PortRow({ port, number, project, chosen }: PortRowProps) {
  const { session, hand } = useBench();
  const row = useShownWhen<HTMLLIElement>(chosen);
  const users = runsAt(project, port.id);
  const choose = (): void => {
    hand.set({ port: chosen ? null : port.id });
    if (!chosen) session.flyTo(port.seatPoint, PORT_SPAN_MM);
  };
  return (
    <li ref={row} className={chosen ? 'port-open' : undefined}>
      <button type="button" className="port-row" aria-expanded={chosen} onClick={choose}>
        <span className="port-number figure">{number}</span>
        <span className="port-name">{port.name}</span>
        <span className="port-seat">
          {formatDash(port.dash)} {seatWords(port.seat)}
          {port.adapters !== undefined &&
            `, ${port.adapters.length === 1 ? 'adapter' : `${port.adapters.length} adapters`}`}
        </span>
        <span className="port-users">{users.length > 0 ? users.join(', ') : 'no run yet'}</span>
      </button>
      {chosen && <PortFields port={port} project={project} />}
    </li>
  );
}
