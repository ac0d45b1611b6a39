import { madeCounts } from './benchProgress.ts';
import type { OpenDocument } from './documentStore.ts';
import { runState } from './runState.ts';
import type { Step } from './sessionStore.ts';

/** What is still open in a step, in a few words. `done` = nothing is; `waits` = the step cannot be worked yet. */
export interface Opening {
  readonly state: 'open' | 'done' | 'waits';
  readonly words: string;
}

const count = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;
const open = (words: string): Opening => ({ state: 'open', words });
const done = (words: string): Opening => ({ state: 'done', words });
const waits = (words: string): Opening => ({ state: 'waits', words });

/** What is open in every step of the job. `document` null = nothing is on the bench. */
export function stepOpenings(document: OpenDocument | null): Record<Step, Opening> {
  if (document === null) {
    const nothing = waits('waits for a bay');
    const [ports, runs, checks, papers, bench] = [nothing, nothing, nothing, nothing, nothing];
    return { bay: open('bring in a bay'), ports, runs, checks, papers, bench };
  }
  return {
    bay: bayOpening(document),
    ports: portsOpening(document),
    runs: runsOpening(document),
    checks: checksOpening(document),
    papers: papersOpening(document),
    bench: benchOpening(document),
  };
}

function bayOpening({ bay, warnings }: OpenDocument): Opening {
  if (bay === null) return open('being read');
  return warnings.length > 0 ? open(count(warnings.length, 'thing to know', 'things to know')) : done('read');
}

function portsOpening({ history: { present } }: OpenDocument): Opening {
  const used = new Set(present.runs.flatMap((run) => [run.a.port, run.b.port]));
  const unused = present.ports.filter((port) => !used.has(port.id)).length;
  if (present.ports.length === 0) return open('put the first');
  return unused > 0 ? open(`${unused} without a run`) : done(count(present.ports.length, 'port', 'ports'));
}

function runsOpening(document: OpenDocument): Opening {
  const { runs } = document.history.present;
  if (runs.length === 0) return open('state the first');
  const states = runs.map((run) => runState(document, run.id));
  const toLay = states.filter((state) => state === 'not-laid' || state === 'stale').length;
  if (toLay > 0) return open(`${toLay} to lay`);
  const blocked = document.report?.lays.filter((lay) => lay.outcome !== 'laid').length ?? 0;
  return blocked > 0 ? open(`${blocked} without a good way`) : done('all laid');
}

function checksOpening({ report }: OpenDocument): Opening {
  if (report === null) return waits('wait for a lay');
  const stops = report.findings.filter((finding) => finding.severity === 'stop').length;
  const looks = report.findings.filter((finding) => finding.severity === 'look').length;
  if (stops > 0) return open(`${stops} to put right`);
  return looks > 0 ? open(`${looks} to look at`) : done('nothing open');
}

function papersOpening(document: OpenDocument): Opening {
  if (document.report === null) return waits('wait for a lay');
  const { lays } = document.report;
  const all = document.history.present.runs.length;
  if (lays.length < all) return open(`for ${lays.length} of ${all} runs`);
  const states = lays.map((lay) => runState(document, lay.run));
  const ready = states.filter((state) => state === 'clean' || state === 'look').length;
  return ready === states.length ? done('ready to print') : open(`${states.length - ready} not fit to cut`);
}

function benchOpening({ report, history: { present } }: OpenDocument): Opening {
  const all = present.runs.length;
  const counts = madeCounts(present);
  if (counts.failed > 0) return open(count(counts.failed, 'failed its test', 'failed their tests'));
  if (counts['to-make'] === all) return report === null ? waits('wait for a lay') : open('none made yet');
  return counts.fitted === all ? done('all fitted') : open(`${counts.fitted} of ${all} fitted`);
}
