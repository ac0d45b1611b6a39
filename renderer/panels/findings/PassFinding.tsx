import { useState } from 'react';
import type { Finding } from '../../../shared/document/lay/schema.ts';
import { formatInUnit, formatNumber } from '../../../shared/sheets/format/index.ts';
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

/** The limit that would pass, with so many digits, and never a rounding short of passing. */
function offered(now: number, wouldPass: number): number {
  return Number(formatNumber(wouldPass, DECIMALS, wouldPass < now ? 'down' : 'up'));
}

function PassForm({ finding, passing, onDone }: { finding: Finding; passing: Passing; onDone: () => void }) {
  const { document, byHand } = useBench();
  const { rule, now, wouldPass } = passing;
  // A share is read and typed as per cent, as the finding and the papers tell it.
  const [unit, per] = rule.unit === 'ratio' ? ['%', 100] : [rule.unit === 'count' ? '' : rule.unit, 1];
  const [value, setValue] = useState(() => offered(now, wouldPass));
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
        unit={unit}
        value={value * per}
        low={Math.min(0, 10 * wouldPass, 10 * now) * per}
        high={Math.max(1, 10 * wouldPass, 10 * now) * per}
        step={1}
        decimals={per === 1 ? DECIMALS : DECIMALS - 2}
        onSet={(typed) => setValue(Number((typed / per).toFixed(DECIMALS)))}
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
