import { useEffect, useId, useState } from 'react';
import { useStore } from 'zustand';
import { FLUIDS } from '../../../shared/document/parts/fluids.ts';
import { type Port, PURPOSES, type Purpose } from '../../../shared/document/project/schema.ts';
import { seatWords } from '../../../shared/document/wording/seatWords.ts';
import { FLUID_WORDS, PURPOSE_WORDS } from '../../../shared/document/wording/serviceWords.ts';
import { formatDash } from '../../../shared/sheets/format/index.ts';
import type { OpenDocument } from '../../state/documentStore.ts';
import { draftProblems, draftRun, freePorts, type RunDraft } from '../../state/edits/newRun.ts';
import { portSeat } from '../../state/portSeat.ts';
import { useBench, useDocument } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { Choice } from '../../widgets/Choice.tsx';
import { TextField } from '../../widgets/TextField.tsx';
import { PressureField, TemperatureField } from '../ServiceField.tsx';
import { EndChoice, HoseChoice } from './PartChoices.tsx';

/** A new run is stated here before it is one: two free ports, what it carries, what it is made of. */
export function NewRun() {
  const open = useDocument((state) => state.open);
  if (open === null) return null;
  const first = draftRun(open.history.present, open.tables, {});
  return (
    <article className="slip card" aria-label="New run">
      {first === null ? <NoDraft open={open} /> : <DraftCard open={open} first={first} />}
    </article>
  );
}

function NoDraft({ open }: { open: OpenDocument }) {
  const { session, hand } = useBench();
  const free = freePorts(open.history.present).length;
  const short = free < 2;
  return (
    <>
      <h2>New run</h2>
      <p>
        {short
          ? `A run joins two ports that no hose joins yet, and there ${free === 1 ? 'is one' : 'is none'}.`
          : 'The part tables have no hose, or no end that goes on one.'}
      </p>
      <div className="support-buttons">
        {short && (
          <Button
            look="main"
            disabled={open.bay === null}
            onPress={() => {
              session.goTo('ports');
              hand.take({ kind: 'seat', port: null });
            }}
          >
            Put a port on the bay
          </Button>
        )}
        <Button onPress={() => hand.set({ stating: false })}>Leave it</Button>
      </div>
    </>
  );
}

function DraftCard({ open, first }: { open: OpenDocument; first: RunDraft }) {
  const { hand, onRuns } = useBench();
  const [draft, setDraft] = useState(first);
  const [ownName, setOwnName] = useState(false);
  const title = useId();
  const { tables } = open;
  const project = open.history.present;
  const problems = draftProblems(draft, project, tables);
  const change = (to: Partial<RunDraft>): void => setDraft({ ...draft, ...to });
  /** Everything that hangs on ports, purpose or hose is filled in anew; what was stated beside stays. */
  const refill = (to: Partial<Pick<RunDraft, 'portA' | 'portB' | 'purpose' | 'hose'>>): void => {
    const { portA, portB, purpose } = draft;
    const next = draftRun(project, tables, { portA, portB, purpose, ...to });
    if (next === null) return;
    const kept =
      to.purpose === undefined
        ? { pressureKpa: draft.pressureKpa, temperatureC: draft.temperatureC, fluid: draft.fluid }
        : {};
    setDraft({ ...next, ...kept, ...(ownName ? { name: draft.name } : {}) });
  };
  const { portA, portB } = draft;
  const joins = useStore(hand, (state) => state.joins);
  useEffect(() => {
    hand.set({ joins: { next: 'a', ...hand.getState().joins, a: portA, b: portB } });
  }, [hand, portA, portB]);
  useEffect(() => () => hand.set({ joins: null }), [hand]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: only what is picked in the bay changes the draft from there
  useEffect(() => {
    if (joins !== null && (joins.a !== portA || joins.b !== portB)) refill({ portA: joins.a, portB: joins.b });
  }, [joins]);
  const hose = tables.hoses.find(({ id }) => id === draft.hose);
  const portOf = (id: string): Port | undefined => {
    const port = project.ports.find((p) => p.id === id);
    return port && portSeat(port, tables.adapters).port;
  };
  const portOptions = freePorts(project).map((port) => ({
    value: port.id,
    label: `${port.name} (${formatDash(port.dash)} ${seatWords(port.seat)})`,
  }));
  const asked = { ...draft, ports: [portOf(draft.portA), portOf(draft.portB)] };
  return (
    <>
      <h2 id={title}>New run</h2>
      <p className="teach">
        Click the tag of END {joins?.next === 'b' ? 'B' : 'A'}’s port in the bay, or choose both ports here.
      </p>
      <div className="changes">
        <Choice
          label="What it is for"
          value={draft.purpose}
          options={PURPOSES.map((purpose) => ({ value: purpose, label: PURPOSE_WORDS[purpose] }))}
          onChoose={(purpose) => refill({ purpose: purpose as Purpose })}
        />
        <TextField
          label="Name"
          value={draft.name}
          onSet={(name) => {
            setOwnName(true);
            change({ name });
          }}
        />
        <Choice label="END A at" value={draft.portA} options={portOptions} onChoose={(portA) => refill({ portA })} />
        <Choice label="END B at" value={draft.portB} options={portOptions} onChoose={(portB) => refill({ portB })} />
        <HoseChoice hoses={tables.hoses} value={draft.hose} asked={asked} onChoose={(id) => refill({ hose: id })} />
        <EndChoice
          label="End on END A"
          ends={tables.ends}
          value={draft.endA}
          hose={hose}
          port={portOf(draft.portA)}
          onChoose={(endA) => change({ endA })}
        />
        <EndChoice
          label="End on END B"
          ends={tables.ends}
          value={draft.endB}
          hose={hose}
          port={portOf(draft.portB)}
          onChoose={(endB) => change({ endB })}
        />
        <Choice
          label="Carries"
          value={draft.fluid}
          options={FLUIDS.map((fluid) => ({ value: fluid, label: FLUID_WORDS[fluid] }))}
          onChoose={(fluid) => change({ fluid: fluid as RunDraft['fluid'] })}
        />
        <PressureField value={draft.pressureKpa} onSet={(pressureKpa) => change({ pressureKpa })} />
        <TemperatureField value={draft.temperatureC} onSet={(temperatureC) => change({ temperatureC })} />
      </div>
      {problems.length > 0 && (
        <ul className="missing" aria-label="Still missing">
          {problems.map((problem) => (
            <li key={problem}>{problem}</li>
          ))}
        </ul>
      )}
      <div className="support-buttons">
        <Button look="main" disabled={problems.length > 0} onPress={() => onRuns.add(draft)}>
          Add this run
        </Button>
        <Button onPress={() => hand.set({ stating: false })}>Leave it</Button>
      </div>
    </>
  );
}
