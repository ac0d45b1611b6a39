import type { Lay } from '../../../shared/document/lay/schema.ts';
import { CHASSIS_BODY, type Project, type Run, SEALS, type Support } from '../../../shared/document/project/schema.ts';
import { SEAL_WORDS, SUPPORT_WORDS } from '../../../shared/document/wording/bayWords.ts';
import { changeSupport, type SupportKind, supportName } from '../../state/edits/supportEdits.ts';
import { hosePlace, rounded, supportArc } from '../../state/supportPlaces.ts';
import { useBench } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { Choice } from '../../widgets/Choice.tsx';
import { TextField } from '../../widgets/TextField.tsx';
import { Length } from '../Length.tsx';
import { DirectionField, PointField } from '../LengthField.tsx';
import { MaybeLengthField } from '../MaybeLengthField.tsx';
import { useShownWhen } from '../useShownWhen.ts';

interface SupportRowProps {
  readonly run: Run;
  readonly lay: Lay | undefined;
  readonly support: Support;
  /** its number in the run's list, from 0 */
  readonly at: number;
  readonly chosen: boolean;
}

/** mm of bay seen round a support that is flown to. */
const SPAN_MM = 260;

/** One support on the run's list; chosen, it opens its values. */
export function SupportRow({ run, lay, support, at, chosen }: SupportRowProps) {
  const { hand, hover, session } = useBench();
  const row = useShownWhen<HTMLLIElement>(chosen);
  const name = supportName(run.supports, support, SUPPORT_WORDS[support.kind]);
  const arc = lay === undefined ? undefined : supportArc(lay, support);
  const choose = (): void => {
    hand.set({ support: chosen ? null : support.id });
    if (chosen) return;
    if (arc !== undefined) hover.setState({ place: { run: run.id, arcLengthMm: arc, from: 'finding' } });
    session.flyTo(support.point, SPAN_MM);
  };
  return (
    <li ref={row} className={chosen ? 'support support-open' : 'support'}>
      <button type="button" className="support-row" aria-expanded={chosen} onClick={choose}>
        <span className="support-number figure">{at + 1}</span>
        <span className="support-name">{name}</span>
        {support.name !== undefined && (
          <span className="support-kind">{SUPPORT_WORDS[support.kind].toLowerCase()}</span>
        )}
        {arc !== undefined && (
          <span className="support-place">
            at <Length mm={arc} />
          </span>
        )}
      </button>
      {chosen && <SupportFields run={run} lay={lay} support={support} at={at} name={name} />}
    </li>
  );
}

const KIND_OPTIONS = (['clamp', 'pass-through', 'waypoint'] as const).map((kind) => ({
  value: kind,
  label: SUPPORT_WORDS[kind],
}));

function SupportFields({ run, lay, support, at, name }: Omit<SupportRowProps, 'chosen'> & { name: string }) {
  const { byHand, document } = useBench();
  const project = document.getState().open?.history.present;
  const change = (what: string, to: Parameters<typeof changeSupport>[3], join = false): void =>
    byHand.edit(run.id, `${what} of ${name}`, (now) => changeSupport(now, run.id, support.id, to), join);
  const bodies = bodiesOf(project);
  const clamps = document.getState().open?.tables.clamps ?? [];
  const here =
    project === undefined ? null : hosePlace(project, run, lay, lay === undefined ? null : supportArc(lay, support));
  return (
    <div className="support-fields">
      <TextField
        label="Name"
        value={support.name ?? ''}
        hint={name}
        mayBeEmpty
        onSet={(own) => change('name', { name: own })}
      />
      <Choice
        label="Kind"
        value={support.kind}
        options={KIND_OPTIONS}
        onChoose={(kind) => change('kind', kindChange(kind as SupportKind, support, here?.along))}
      />
      {support.kind !== 'waypoint' && bodies.length > 1 && (
        <Choice
          label="Fixed to"
          value={support.body ?? CHASSIS_BODY.id}
          options={bodies.map(({ id, name: words }) => ({ value: id, label: words }))}
          onChoose={(body) => change('what it is fixed to', { body })}
        />
      )}
      {support.kind === 'clamp' && clamps.length > 0 && (
        <Choice
          label="Clamp"
          value={support.part ?? NOT_STATED}
          options={[
            { value: NOT_STATED, label: 'not stated' },
            ...clamps.map(({ id, name: words }) => ({ value: id, label: words })),
          ]}
          onChoose={(part) => change('clamp', { part })}
        />
      )}
      {support.kind === 'pass-through' && (
        <Choice
          label="Sealed by"
          value={support.seal ?? NOT_STATED}
          options={[
            ...(support.seal === undefined ? [{ value: NOT_STATED, label: 'not stated' }] : []),
            ...SEALS.map((seal) => ({ value: seal, label: SEAL_WORDS[seal] })),
          ]}
          onChoose={(seal) => change('seal', { seal: seal as NonNullable<Support['seal']> })}
        />
      )}
      {support.kind === 'pass-through' && (
        <label className="check">
          <input
            type="checkbox"
            checked={support.inFirewall === true}
            onChange={({ target }) => change('firewall', { inFirewall: target.checked })}
          />
          Through a firewall
        </label>
      )}
      {support.kind === 'pass-through' && (
        <MaybeLengthField
          label="Hole across"
          hint="Not stated: whether the hose goes through is not checked."
          mm={support.holeMm}
          onSet={(holeMm) => change('hole', { holeMm: holeMm ?? 0 })}
        />
      )}
      <PointField
        label="Place"
        point={support.point}
        onSet={(point) => change('place', { point: rounded(point, 1000) }, true)}
      />
      {support.kind !== 'waypoint' && support.axis !== undefined && (
        <DirectionField
          label="Along the hose, A to B"
          direction={support.axis}
          onSet={(axis) => change('direction', { axis: rounded(axis, 1e6) }, true)}
        />
      )}
      <div className="support-buttons">
        {support.kind !== 'waypoint' && here !== null && (
          <Button
            onPress={() => change('direction', { axis: rounded(here.along, 1e6) })}
            hint="Takes the direction that the hose has here"
          >
            As the hose lies
          </Button>
        )}
        <Button
          disabled={at === 0}
          name={`${name}: nearer to END A`}
          onPress={() => byHand.reorder(run.id, support.id, -1)}
        >
          Towards A
        </Button>
        <Button
          disabled={at === run.supports.length - 1}
          name={`${name}: nearer to END B`}
          onPress={() => byHand.reorder(run.id, support.id, 1)}
        >
          Towards B
        </Button>
        <Button name={`Remove ${name}`} hint="Key Delete" onPress={() => byHand.remove(run.id, support.id)}>
          Remove
        </Button>
      </div>
    </div>
  );
}

const NOT_STATED = '';

function bodiesOf(project: Project | undefined): readonly { readonly id: string; readonly name: string }[] {
  return [CHASSIS_BODY, ...(project?.bay.bodies ?? []).filter(({ id }) => id !== CHASSIS_BODY.id)];
}

/** What only guides needs no direction; what holds needs one, and the hose has it. */
function kindChange(
  kind: SupportKind,
  support: Support,
  along: readonly [number, number, number] | undefined,
): Parameters<typeof changeSupport>[3] {
  if (kind === 'waypoint' || support.axis !== undefined || along === undefined) return { kind };
  return { kind, axis: rounded(along, 1e6) };
}
