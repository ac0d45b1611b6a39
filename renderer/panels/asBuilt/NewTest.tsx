import { useState } from 'react';
import type { SystemTestRecord } from '../../../shared/document/project/schema.ts';
import { Button } from '../../widgets/Button.tsx';
import { NumberField } from '../../widgets/NumberField.tsx';
import { TextField } from '../../widgets/TextField.tsx';
import { PressureField } from '../ServiceField.tsx';
import { DAY, DAY_HINT, DAY_WRONG } from './day.ts';

/** What every pressure test is written down by. */
type TestRecord = Pick<SystemTestRecord, 'on' | 'pressureKpa' | 'holdS' | 'failed'>;

/** What is typed before it is written down. */
interface Typed {
  readonly on: string;
  readonly pressureKpa: number | null;
  readonly holdS: number | null;
  readonly failed: boolean;
}
const NOTHING: Typed = { on: '', pressureKpa: null, holdS: null, failed: false };

interface NewTestProps {
  readonly isTimed: boolean;
  readonly busy: boolean;
  /** what is ticked when it did not stand the test */
  readonly failedWords?: string;
  readonly onWrite: (record: TestRecord) => void;
}

/** A pressure test as it is written down: its day, what was held and how long, and whether it stood. */
export function NewTest({ isTimed, busy, failedWords = 'It lost pressure', onWrite }: NewTestProps) {
  const [typed, setTyped] = useState(NOTHING);
  const change = (to: Partial<Typed>): void => setTyped({ ...typed, ...to });
  const record = recordOf(typed);
  return (
    <>
      <TextField
        label="Tested on"
        value={typed.on}
        hint={DAY_HINT}
        mayBeEmpty
        takes={(on) => DAY.test(on)}
        wrongWords={DAY_WRONG}
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
        {failedWords}
      </label>
      <Button disabled={busy || record === undefined} onPress={() => record !== undefined && onWrite(record)}>
        Write this test down
      </Button>
    </>
  );
}

/** The record that is typed; undefined while its day or its pressure is missing. */
function recordOf({ on, pressureKpa, holdS, failed }: Typed): TestRecord | undefined {
  if (!DAY.test(on) || pressureKpa === null || pressureKpa <= 0) return undefined;
  return { on, pressureKpa, ...(holdS === null ? {} : { holdS }), ...(failed ? { failed } : {}) };
}
