import type { Run, SystemTestRecord } from '../../../shared/document/project/schema.ts';
import { systemTest } from '../../../shared/document/proof/systemTest.ts';
import { formatNumber } from '../../../shared/sheets/format/index.ts';
import { useBench, useDocument, useJobs } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { NewTest } from './NewTest.tsx';

/** The test of the exhaust or of the boat's fuel that this hose is part of: what it has to stand, and what was seen. */
export function SystemTestField({ run }: { run: Run }) {
  const { onBuilt } = useBench();
  const busy = useJobs((jobs) => jobs.current !== null);
  const vehicle = useDocument(({ open }) => open?.history.present.vehicle);
  const test = systemTest(run.service, vehicle);
  if (test === undefined) return null;
  const written = run.asBuilt?.systemTest;
  return (
    <section aria-label={`Test of the ${test.system}`}>
      <h4>Test of the {test.system}</h4>
      <p className="teach">
        {test.words} <strong>{test.caution}</strong>
      </p>
      {written === undefined ? (
        <NewTest
          key={run.id}
          isTimed={test.holdS !== undefined}
          busy={busy}
          onWrite={(record) => void onBuilt.write(run.id, { systemTest: record })}
        />
      ) : (
        <div role="status">
          <p className="teach">{recordWords(written)}</p>
          <Button disabled={busy} onPress={() => void onBuilt.takeBack(run.id, 'systemTest')}>
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
