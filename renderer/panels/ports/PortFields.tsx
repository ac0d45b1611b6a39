import { UP_ALONG_AXIS_RAD } from '../../../shared/base/tolerances.ts';
import { angleBetween, scale, unit, type Vec3 } from '../../../shared/base/vec3.ts';
import { END_MATERIALS } from '../../../shared/document/parts/schema.ts';
import { CHASSIS_BODY, type Port, type Project } from '../../../shared/document/project/schema.ts';
import { END_MATERIAL_WORDS } from '../../../shared/document/wording/partWords.ts';
import { seatWords } from '../../../shared/document/wording/seatWords.ts';
import { formatDash } from '../../../shared/sheets/format/index.ts';
import {
  changePort,
  seatPort,
  setPortBody,
  setPortBore,
  setPortInFirewall,
  setPortMaterial,
  upFor,
} from '../../state/edits/portEdits.ts';
import { rounded } from '../../state/supportPlaces.ts';
import { useBench, useDocument } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { Choice } from '../../widgets/Choice.tsx';
import { TextField } from '../../widgets/TextField.tsx';
import { DirectionField, PointField } from '../LengthField.tsx';
import { MaybeLengthField } from '../MaybeLengthField.tsx';
import { AdaptersField } from './AdaptersField.tsx';
import { RigidLineField } from './RigidLineField.tsx';

/** Everything a port states, to be typed; each change is one step back and marks the runs that join it. */
export function PortFields({ port, project }: { port: Port; project: Project }) {
  const { document, hand, onBay } = useBench();
  const ends = useDocument((state) => state.open?.tables.ends) ?? [];
  const change = (what: string, to: Partial<Omit<Port, 'id'>>, join = false): void =>
    document.edit(`${what} of ${port.name}`, (now) => changePort(now, port.id, to), join);
  const adapters = useDocument((state) => state.open?.tables.adapters) ?? [];
  const seats = listed([
    ...ends.map((end) => end.seat),
    ...adapters.map((adapter) => adapter.portSeat),
    ...project.ports.map((p) => p.seat),
  ]);
  const dashes = listed([
    ...ends.map((end) => end.dash),
    ...adapters.map((adapter) => adapter.portDash),
    ...project.ports.map((p) => p.dash),
  ]);
  const bodies = [CHASSIS_BODY, ...project.bay.bodies.filter(({ id }) => id !== CHASSIS_BODY.id)];
  return (
    <div className="support-fields">
      <TextField label="Name" value={port.name} onSet={(name) => change('name', { name })} />
      <div className="field-pair">
        <Choice
          label="Thread or seat"
          value={port.seat}
          options={seats.map((seat) => ({ value: seat, label: seatWords(seat) }))}
          onChoose={(seat) => change('seat', { seat })}
        />
        <Choice
          label="Dash size"
          value={String(port.dash)}
          options={dashes.sort((p, q) => p - q).map((dash) => ({ value: String(dash), label: formatDash(dash) }))}
          onChoose={(dash) => change('dash size', { dash: Number(dash) })}
        />
      </div>
      <Choice
        label="Goes with"
        value={port.body ?? CHASSIS_BODY.id}
        options={bodies.map(({ id, name }) => ({ value: id, label: name }))}
        onChoose={(body) =>
          document.edit(`body of ${port.name}`, (now) =>
            setPortBody(now, port.id, body === CHASSIS_BODY.id ? undefined : body),
          )
        }
      />
      <Choice
        label="Metal of the part"
        value={port.material ?? ''}
        options={[
          { value: '', label: 'not said' },
          ...END_MATERIALS.map((material) => ({ value: material, label: END_MATERIAL_WORDS[material] })),
        ]}
        onChoose={(value) =>
          document.edit(`metal at ${port.name}`, (now) =>
            setPortMaterial(
              now,
              port.id,
              END_MATERIALS.find((material) => material === value),
            ),
          )
        }
      />
      <MaybeLengthField
        label="Bore of the hole behind it"
        hint="not known"
        mm={port.boreMm}
        onSet={(boreMm) => document.edit(`bore at ${port.name}`, (now) => setPortBore(now, port.id, boreMm))}
      />
      <label className="check">
        <input
          type="checkbox"
          checked={port.inFirewall === true}
          onChange={({ target }) =>
            document.edit(`firewall at ${port.name}`, (now) => setPortInFirewall(now, port.id, target.checked))
          }
        />
        It is in a firewall
      </label>
      <RigidLineField port={port} />
      <PointField
        label="Middle of the seat"
        point={port.seatPoint}
        onSet={(point) => change('seat', { seatPoint: rounded(point, 1000) }, true)}
      />
      <DirectionField
        label="Axis, out of the part"
        direction={port.axis}
        onSet={(axis) =>
          document.edit(
            `axis of ${port.name}`,
            (now) => seatPort(now, port.id, { seatPoint: port.seatPoint, axis: rounded(axis, 1e6) }),
            true,
          )
        }
      />
      <DirectionField
        label="12 o’clock"
        direction={port.up}
        refuse={(up) =>
          liesAlong(up, port.axis) ? 'This lies along the axis and gives no 12 o’clock; point it across.' : undefined
        }
        onSet={(up) => change('12 o’clock', { up: rounded(upFor(port.axis, up), 1e6) }, true)}
      />
      <AdaptersField port={port} />
      <div className="support-buttons">
        <Button hint="Key m" onPress={() => hand.take({ kind: 'seat', port: port.id })}>
          Put it elsewhere
        </Button>
        <Button
          onPress={() =>
            document.edit(`turn ${port.name} round`, (now) =>
              seatPort(now, port.id, { seatPoint: port.seatPoint, axis: scale(port.axis, -1) }),
            )
          }
          hint="The axis the other way"
        >
          Turn round
        </Button>
        <Button name={`Remove ${port.name}`} hint="Key Delete" onPress={() => onBay.remove(port.id)}>
          Remove
        </Button>
      </div>
    </div>
  );
}

function listed<T>(values: readonly T[]): T[] {
  return [...new Set(values)];
}

function liesAlong(up: Vec3, axis: Vec3): boolean {
  const angle = angleBetween(unit(up), unit(axis));
  return Math.min(angle, Math.PI - angle) < UP_ALONG_AXIS_RAD;
}
