import { clampedEnds, NO_PROOF_WORDS } from '../../../shared/document/assembly/hoseClampSteps.ts';
import type { ResolvedRun } from '../../../shared/document/project/resolve.ts';
import type { ProofRecord } from '../../../shared/document/project/schema.ts';
import { proofTest } from '../../../shared/document/proof/proofTest.ts';
import { formatDegrees, formatNumber, formatPressure } from '../../../shared/sheets/format/index.ts';
import { useBench, useJobs } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { NewTest } from '../asBuilt/NewTest.tsx';

/** The proof test of the finished hose: what is usual for it, by whose word, and what was held. */
export function ProofField({ run }: { run: ResolvedRun }) {
  const { onBuilt } = useBench();
  const busy = useJobs((jobs) => jobs.current !== null);
  const written = run.run.asBuilt?.proof;
  return (
    <section aria-label="Proof test">
      <h3>Proof test</h3>
      {clampedEnds(run).length > 0 ? (
        <p className="teach">{NO_PROOF_WORDS}</p>
      ) : (
        <>
          <UsualProof run={run} />
          {written === undefined ? (
            <NewTest
              key={run.run.id}
              isTimed
              busy={busy}
              failedWords="It leaked, or an end moved"
              onWrite={(proof) => void onBuilt.write(run.run.id, { proof })}
            />
          ) : (
            <div role="status">
              <p className={written.failed === true ? 'reason' : 'teach'}>{proofWords(written)}</p>
              <Button disabled={busy} onPress={() => void onBuilt.takeBack(run.run.id, 'proof')}>
                Forget this test
              </Button>
            </div>
          )}
        </>
      )}
    </section>
  );
}

function UsualProof({ run }: { run: ResolvedRun }) {
  const { pressureKpa, holdFromS, holdToS, byMaker, multiple, weakest, unrated, source, dissent } = proofTest(run);
  const hold = holdFromS === holdToS ? `${holdFromS} s` : `${holdFromS} to ${holdToS} s`;
  return (
    <>
      <p>
        Usual: <b>{formatPressure(pressureKpa)}</b> for {hold}, with liquid, all air out.{' '}
        <strong>Nobody in line with the ends; the hose restrained or boxed in.</strong>
      </p>
      <p className="teach">
        {byMaker
          ? 'The hose maker’s own test pressure'
          : `${formatNumber(multiple, 1)} times what ${weakest.part} bears`}
        . {source}. Others: {dissent}.
        {unrated.length > 0 && ` No rating is stated for ${unrated.join(' and ')}: ask before the pressure goes on.`}{' '}
        The makers of hose and ends have the last word.
      </p>
    </>
  );
}

/** The record in a sentence. */
export function proofWords({ on, pressureKpa, holdS, clockDeg, failed = false }: ProofRecord): string {
  const held = holdS === undefined ? '' : ` for ${holdS} s`;
  if (failed) return `${on}: ${formatPressure(pressureKpa)}${held}, and it did not stand. It is not fitted.`;
  const clock = clockDeg === undefined ? '' : ` Its clock stays at ${formatDegrees(clockDeg)} from now on.`;
  return `${on}: ${formatPressure(pressureKpa)}${held}, no leak, no end moved.${clock}`;
}
