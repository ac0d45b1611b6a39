import { useState } from 'react';
import type { Finding } from '../../../shared/document/lay/schema.ts';
import { formatInUnit } from '../../../shared/sheets/format/index.ts';
import { LEAST_REASON, type Passing, passingOf, setOverride } from '../../state/edits/overrideEdits.ts';
import { useBench, useDocument } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { NumberField } from '../../widgets/NumberField.tsx';
import { TextField } from '../../widgets/TextField.tsx';

/** A finding passed by the user's own limit: with a reason, which is printed on every paper. */
export function PassFinding({ finding, onDone }: { finding: Finding; onDone: () => void }) {
  const project = useDocument(({ open }) => open?.history.present);
  if (project === undefined) return null;
  const passing = passingOf(project, finding);
  if (typeof passing === 'string')
    return (
      <div className="pass-finding">
        <p className="missing">{passing}</p>
        <Button onPress={onDone}>Leave it</Button>
      </div>
    );
  return <PassForm finding={finding} passing={passing} onDone={onDone} />;
}

/** Digits after the point that a limit is set to. */
const DECIMALS = 3;

function PassForm({ finding, passing, onDone }: { finding: Finding; passing: Passing; onDone: () => void }) {
  const { document, byHand } = useBench();
  const { rule, now, wouldPass } = passing;
  const [value, setValue] = useState(Number(wouldPass.toFixed(DECIMALS)));
  const [reason, setReason] = useState('');
  const short = reason.trim().length < LEAST_REASON;
  const pass = (): void => {
    document.edit('own limit', (project) =>
      setOverride(project, { rule: rule.id, run: finding.run, value, reason: reason.trim() }),
    );
    onDone();
    void byHand.settle(finding.run);
  };
  return (
    <div className="pass-finding">
      <p>
        <b>{rule.title}</b>: {formatInUnit(now, rule.unit)} now. {rule.source}
      </p>
      <NumberField
        label="Own limit for this run"
        unit={rule.unit === 'count' ? '' : rule.unit}
        value={value}
        low={Math.min(0, 10 * wouldPass, 10 * now)}
        high={Math.max(1, 10 * wouldPass, 10 * now)}
        step={rule.unit === 'ratio' ? 0.01 : 1}
        decimals={DECIMALS}
        onSet={setValue}
      />
      <TextField label="Reason, printed on every paper" value={reason} mayBeEmpty onSet={setReason} />
      {short && <p className="missing">Say why, in a few words: a limit without a reason is not taken.</p>}
      <div className="support-buttons">
        <Button look="main" disabled={short} onPress={pass}>
          Pass it with this reason
        </Button>
        <Button onPress={onDone}>Leave it</Button>
      </div>
    </div>
  );
}
