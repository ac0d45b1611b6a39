import { PAPERS } from '../../../shared/document/paper/paperNames.ts';
import { runState } from '../../state/runState.ts';
import type { LookedAtPaper } from '../../state/sessionStore.ts';
import { useBench, useDocument, useJobs, useSession } from '../../state/useBench.ts';
import { Button } from '../../widgets/Button.tsx';
import { PaperworkChoices } from './PaperworkChoices.tsx';

/** The papers of the laid runs, drawn on demand and handed over as files. */
export function PapersCard() {
  const bench = useBench();
  const open = useDocument((state) => state.open);
  const busy = useJobs((jobs) => jobs.current !== null);
  const report = open?.report ?? null;
  const stale = open === null ? [] : (report?.lays ?? []).filter((lay) => runState(open, lay.run) === 'stale');
  const ready = report !== null && stale.length === 0;
  return (
    <article className="slip card" aria-labelledby="papers-title">
      <h2 id="papers-title">Papers</h2>
      {report === null && (
        <p className="teach">Lay the runs first. Papers are drawn from a lay and carry its figures, never their own.</p>
      )}
      {stale.length > 0 && (
        <p className="reason">
          {stale.length === 1 ? 'One run has' : `${stale.length} runs have`} changed since it was laid. Lay again before
          printing: a paper must not show a hose that is no longer meant.
        </p>
      )}
      {report !== null && <LookedAt />}
      <div className="paper-buttons">
        <Button look="main" disabled={busy || !ready} onPress={() => void bench.papers(['build-sheets.pdf'])}>
          Download build sheets
        </Button>
        <Button disabled={busy || !ready} onPress={() => void bench.papers(['tags.pdf'])}>
          Download tags
        </Button>
        <Button disabled={busy || !ready} onPress={() => void bench.papers(['cut-list.csv', 'stock-cuts.csv'])}>
          Download cut list
        </Button>
        <Button disabled={busy || !ready} onPress={() => void bench.papers(PAPERS)}>
          All papers
        </Button>
      </div>
      <ul className="paper-words">
        <li>
          <b>Build sheets</b>, PDF: one per hose, with the cut, the marks, the clock, what to thread on first, the
          torque of its nuts by every table that fits, the usual proof test and its life. Print at 100 % and measure the
          check bar before you trust the strip.
        </li>
        <li>
          <b>Tags</b>, PDF, to cut out: one for each hose that may be cut and one for each of its ends, with what it
          carries, what it was cut to, its proof test and its age; what is not written down yet is a line for the pen.
        </li>
        <li>
          <b>Cut list</b>, CSV: all hoses in one table.
        </li>
        <li>
          <b>Stock cuts</b>, CSV with the cut list, where the parts list has rolls: which hose is cut from which roll or
          offcut, what the blade takes, what is left.
        </li>
      </ul>
      <PaperworkChoices />
      <SafetyLines />
    </article>
  );
}

const LOOKED_AT: readonly { readonly paper: LookedAtPaper; readonly words: string }[] = [
  { paper: 'build-sheets.pdf', words: 'Build sheet' },
  { paper: 'tags.pdf', words: 'Tags' },
];

/** Which paper is shown beside, as it would be printed: the chosen run's build sheet, or the tags of all. */
function LookedAt() {
  const { session } = useBench();
  const looked = useSession((state) => state.paper);
  return (
    <fieldset className="measure-kinds">
      <legend>Shown beside</legend>
      {LOOKED_AT.map(({ paper, words }) => (
        <label key={paper} className="measure-kind">
          <input type="radio" name="paper-looked" checked={looked === paper} onChange={() => session.set({ paper })} />
          <span>{words}</span>
        </label>
      ))}
    </fieldset>
  );
}

/** What no paper of ours may be taken for. */
export function SafetyLines() {
  return (
    <p className="safety">
      Hosewright advises; it certifies nothing. Fuel, oil under pressure and hot surfaces burn people. Follow the makers
      of your hose and ends, your local codes and licensed practice where they say otherwise, proof-test every hose
      behind a shield, and mind the braid: its wires cut.
    </p>
  );
}
