import { useState } from 'react';
import type { AsBuilt, Run, SystemTestRecord } from '../../../shared/document/project/schema.ts';
import { systemTest } from '../../../shared/document/proof/systemTest.ts';
import { formatNumber } from '../../../shared/sheets/format/index.ts';
import { useBench, useDocument, useJobs } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { NumberField } from '../../widgets/NumberField.tsx';
import { TextField } from '../../widgets/TextField.tsx';
import { PressureField } from '../ServiceField.tsx';

const DAY = /^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/;

/** What is typed before it is written down. */
interface Typed {
  readonly on: string;
  readonly pressureKpa: number | null;
  readonly holdS: number | null;
  readonly failed: boolean;
}
const NOTHING: Typed = { on: '', pressureKpa: null, holdS: null, failed: false };

/** The test of the exhaust or of the boat's fuel that this hose is part of: what it has to stand, and what was seen. */
export function SystemTestField({ run }: { run: Run }) {
  const { onBuilt } = useBench();
  const busy = useJobs((jobs) => jobs.current !== null);
  const vehicle = useDocument(({ open }) => open?.history.present.vehicle);
  const test = systemTest(run.service, vehicle);
  if (test === undefined) return null;
  const { systemTest: written, ...others } = run.asBuilt ?? {};
  const set = (record: SystemTestRecord | undefined): void => {
    const built: AsBuilt = record === undefined ? others : { ...others, systemTest: record };
    if (!busy) void onBuilt.measured(run.id, Object.keys(built).length === 0 ? undefined : built);
  };
  return (
    <section aria-label={`Test of the ${test.system}`}>
      <h4>Test of the {test.system}</h4>
      <p className="teach">
        {test.words} <strong>{test.caution}</strong>
      </p>
      {written === undefined ? (
        <NewTest key={run.id} isTimed={test.holdS !== undefined} busy={busy} onWrite={set} />
      ) : (
        <div role="status">
          <p className="teach">{recordWords(written)}</p>
          <Button disabled={busy} onPress={() => set(undefined)}>
            Forget this test
          </Button>
        </div>
      )}
    </section>
  );
}

function recordWords({ on, pressureKpa, holdS, failed = false }: SystemTestRecord): string {
  const held = holdS === undefined ? '' : ` for ${holdS} s`;
  return `${on}: ${formatNumber(pressureKpa, 1)} kPa${held}, ${failed ? 'it lost pressure' : 'nothing was lost'}.`;
}

interface NewTestProps {
  readonly isTimed: boolean;
  readonly busy: boolean;
  readonly onWrite: (record: SystemTestRecord) => void;
}

function NewTest({ isTimed, busy, onWrite }: NewTestProps) {
  const [typed, setTyped] = useState(NOTHING);
  const change = (to: Partial<Typed>): void => setTyped({ ...typed, ...to });
  const record = recordOf(typed);
  return (
    <>
      <TextField
        label="Tested on"
        value={typed.on}
        hint="such as 2026-05-12"
        mayBeEmpty
        takes={(on) => DAY.test(on)}
        wrongWords="Expected a day such as 2026-05-12."
        onSet={(on) => change({ on })}
      />
      <PressureField
        label="Pressure held"
        decimals={1}
        value={typed.pressureKpa}
        onSet={(pressureKpa) => change({ pressureKpa })}
      />
      {isTimed && (
        <NumberField
          label="Held for"
          unit="s"
          value={typed.holdS}
          low={1}
          high={86_400}
          step={60}
          decimals={0}
          onSet={(holdS) => change({ holdS })}
        />
      )}
      <label className="check">
        <input type="checkbox" checked={typed.failed} onChange={(event) => change({ failed: event.target.checked })} />
        It lost pressure
      </label>
      <Button disabled={busy || record === undefined} onPress={() => record !== undefined && onWrite(record)}>
        Write this test down
      </Button>
    </>
  );
}

/** The record that is typed; undefined while its day or its pressure is missing. */
function recordOf({ on, pressureKpa, holdS, failed }: Typed): SystemTestRecord | undefined {
  if (!DAY.test(on) || pressureKpa === null || pressureKpa <= 0) return undefined;
  return { on, pressureKpa, ...(holdS === null ? {} : { holdS }), ...(failed ? { failed } : {}) };
}
