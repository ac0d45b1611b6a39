import type { ResolvedRun } from '../../../shared/document/project/resolve.ts';
import { CRIMP_MEASURING, crimpVerdict } from '../../../shared/document/proof/crimpVerdict.ts';
import { readReadings } from '../../state/benchProgress.ts';
import { useBench, useJobs } from '../../state/useBench.ts';
import { TextField } from '../../widgets/TextField.tsx';

const SIDES = ['a', 'b'] as const;

/** What was read of the finished crimps, and whether they keep the diameter that the table of ends asks; nothing without a crimped end. */
export function CrimpFields({ run }: { run: ResolvedRun }) {
  const crimped = SIDES.filter((side) => run[side].end.joint === 'crimp');
  if (crimped.length === 0) return null;
  return (
    <section aria-label="Crimps">
      <h3>Crimps</h3>
      <p className="teach">{CRIMP_MEASURING}</p>
      {crimped.map((side) => (
        <CrimpField key={side} run={run} side={side} />
      ))}
    </section>
  );
}

function CrimpField({ run, side }: { run: ResolvedRun; side: 'a' | 'b' }) {
  const { onBuilt } = useBench();
  const busy = useJobs((jobs) => jobs.current !== null);
  const { crimpMm } = run.run.asBuilt ?? {};
  const readings = crimpMm?.[side] ?? [];
  const verdict = crimpVerdict(run[side].end, readings);
  const set = (text: string): void => {
    const read = readReadings(text);
    if (read === null || busy) return;
    const { [side]: _old, ...other } = crimpMm ?? {};
    const both = read.length === 0 ? other : { ...other, [side]: [...read] };
    if (Object.keys(both).length === 0) void onBuilt.takeBack(run.run.id, 'crimpMm');
    else void onBuilt.write(run.run.id, { crimpMm: both });
  };
  return (
    <>
      <TextField
        label={`Crimp of END ${side.toUpperCase()}, mm`}
        value={readings.map((mm) => mm.toFixed(2)).join(' ')}
        hint="such as 21.02 21.05"
        mayBeEmpty
        takes={(text) => readReadings(text) !== null}
        wrongWords="Expected diameters in mm, such as 21.02 21.05."
        onSet={set}
      />
      {readings.length > 0 && (
        <p className={verdict.outcome === 'within' ? 'teach' : 'reason'} role="status">
          {verdict.words}
        </p>
      )}
    </>
  );
}
