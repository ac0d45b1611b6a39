import { createStore } from 'zustand/vanilla';
import type { ProjectFiles } from '../../shared/jobs/contract.ts';
import type { DocumentStore } from './documentStore.ts';
import type { BenchPorts } from './ports.ts';
import type { LookedAtPaper, SessionStore } from './sessionStore.ts';

/** The paper that is looked at as it would be printed now. */
export interface PreviewState {
  /** the paper, the run that it is of (null = of all), and its PDF; the one before stays until the new one is drawn */
  readonly paper: { readonly name: LookedAtPaper; readonly run: string | null; readonly pdf: Uint8Array } | null;
  readonly drawing: boolean;
  /** why there is no paper, in a sentence */
  readonly trouble: string | null;
}

interface PreviewNeeds {
  readonly document: DocumentStore;
  readonly session: SessionStore;
  readonly ports: Pick<BenchPorts, 'jobs' | 'paperFonts' | 'today'>;
  readonly filesNow: () => { readonly files: ProjectFiles } | null;
}

/** ms after the last change before the paper is drawn anew. */
const REST_MS = 250;

/** Draws the chosen run's build sheet, or the tags of all, whenever the papers' step is shown and something on it changed. */
export function createOnPreview({ document, session, ports, filesNow }: PreviewNeeds) {
  const store = createStore<PreviewState>(() => ({ paper: null, drawing: false, trouble: null }));
  let resting: ReturnType<typeof setTimeout> | undefined;
  let cancel: (() => void) | null = null;
  let drawnOf: readonly unknown[] = [];

  /** The run that the paper is of; null = of all, undefined = none is chosen. */
  const runOfPaper = (): string | null | undefined => {
    const { paper, run } = session.getState();
    return paper === 'tags.pdf' ? null : (run ?? undefined);
  };

  /** What the paper depends on, by identity. */
  const subject = (): readonly unknown[] | null => {
    const { step, paper } = session.getState();
    const { open } = document.getState();
    const run = runOfPaper();
    const laid = open?.report?.lays.some((lay) => run === null || lay.run === run) === true;
    return step === 'papers' && run !== undefined && laid ? [paper, run, open.history.present, open.report] : null;
  };

  const draw = async (): Promise<void> => {
    const of = subject();
    const now = filesNow();
    const report = document.getState().open?.report;
    const run = runOfPaper();
    const { paper: name } = session.getState();
    if (of === null || now === null || report === null || report === undefined || run === undefined) return;
    cancel?.();
    drawnOf = of;
    store.setState({ drawing: true });
    const fonts = await ports.paperFonts();
    const runs = run === null ? {} : { runs: [run] };
    const input = { ...now.files, report, ...runs, papers: [name], fonts, printedOn: ports.today() };
    const job = ports.jobs.start('makeSheets', input, () => undefined);
    cancel = job.cancel;
    const end = await job.end;
    if (drawnOf !== of) return;
    cancel = null;
    const pdf = end.kind === 'done' ? end.output.files.find(({ path }) => path.endsWith('.pdf')) : undefined;
    if (pdf !== undefined) store.setState({ paper: { name, run, pdf: pdf.bytes }, drawing: false, trouble: null });
    else store.setState({ drawing: false, trouble: troubleOf(end) });
  };

  const look = (): void => {
    const of = subject();
    if (of === null) {
      if (store.getState().paper !== null && runOfPaper() !== store.getState().paper?.run)
        store.setState({ paper: null });
      return;
    }
    if (of.every((part, i) => part === drawnOf[i]) && of.length === drawnOf.length) return;
    clearTimeout(resting);
    resting = setTimeout(() => void draw(), REST_MS);
  };
  document.subscribe(look);
  session.subscribe(look);
  return store;
}

export type OnPreview = ReturnType<typeof createOnPreview>;

function troubleOf(end: {
  readonly kind: string;
  readonly problems?: readonly { readonly message: string }[];
}): string {
  if (end.kind === 'cancelled') return 'The drawing was stopped.';
  const [problem] = end.problems ?? [];
  return problem === undefined ? 'The paper could not be drawn, by our own mistake.' : `${problem.message}.`;
}
