import type { Port, Project } from '../../../shared/document/project/schema.ts';
import { formatDash, formatNumber } from '../../../shared/sheets/format/index.ts';
import { useBench, useDocument } from '../../state/useBench.ts';
import { wordsOf } from '../runs/words.ts';

const PORT_SPAN_MM = 320;

/** Every port with its values; choosing one flies to it. */
export function PortsCard() {
  const project = useDocument((state) => state.open?.history.present ?? null);
  if (project === null) return null;
  return (
    <article className="slip card" aria-labelledby="ports-title">
      <h2 id="ports-title">Ports</h2>
      <ul className="ports" aria-label="Ports">
        {project.ports.map((port, i) => (
          <PortRow key={port.id} port={port} number={i + 1} project={project} />
        ))}
      </ul>
      <p className="teach">Dropping ports on the mesh is not built yet: state them in the project file.</p>
    </article>
  );
}

function PortRow({ port, number, project }: { port: Port; number: number; project: Project }) {
  const { session } = useBench();
  const users = project.runs.filter((run) => run.a.port === port.id || run.b.port === port.id).map((run) => run.name);
  return (
    <li>
      <button type="button" className="port-row" onClick={() => session.flyTo(port.seatPoint, PORT_SPAN_MM)}>
        <span className="port-number figure">{number}</span>
        <span className="port-name">{port.name}</span>
        <span className="port-seat">
          {formatDash(port.dash)} {wordsOf(port.seat)}
        </span>
        <span className="port-values figure">
          seat {triple(port.seatPoint, 1)} mm · axis {triple(port.axis, 3)}
        </span>
        <span className="port-users">{users.length > 0 ? users.join(', ') : 'no run yet'}</span>
      </button>
    </li>
  );
}

function triple(v: readonly number[], decimals: number): string {
  return v.map((n) => formatNumber(n, decimals)).join(', ');
}
