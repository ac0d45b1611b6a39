import { good, type Result } from '../../shared/base/result.ts';
import { distance, type Vec3 } from '../../shared/base/vec3.ts';
import type { OpenedProject, Saved } from '../../shared/desktop/contract.ts';
import type { PaperName } from '../../shared/document/paper/paperNames.ts';
import type { Project } from '../../shared/document/project/schema.ts';
import { serialiseProject } from '../../shared/document/project/serialiseProject.ts';
import type { NamedFile, ProjectFiles } from '../../shared/jobs/contract.ts';
import { createByHand } from './byHand.ts';
import { createDocumentStore } from './documentStore.ts';
import { setEnds } from './edits/runEdits.ts';
import type { NumberedFinding } from './findingOrder.ts';
import { createGuide, followGuide } from './guide.ts';
import { createHandStore, NO_TOOL } from './handStore.ts';
import { createJobsStore } from './jobsStore.ts';
import { keepAnswers } from './keepAnswers.ts';
import { keepPicture } from './keepPicture.ts';
import { createLeaving } from './leaving.ts';
import { measureJoined } from './measureJoined.ts';
import { createOnBay } from './onBay.ts';
import { createOnBuilt } from './onBuilt.ts';
import { createOnFitting } from './onFitting.ts';
import { createOnMeasure } from './onMeasure.ts';
import { createOnMends } from './onMends.ts';
import { createOnNewBay } from './onNewBay.ts';
import { createOnPreview } from './onPreview.ts';
import { createOnRecent } from './onRecent.ts';
import { createOnRod } from './onRod.ts';
import { createOnRuns } from './onRuns.ts';
import { createOnSquareUp } from './onSquareUp.ts';
import { createOnSweep } from './onSweep.ts';
import { createOnWays } from './onWays.ts';
import { createDrawerStore } from './parts/drawerStore.ts';
import { createOnParts } from './parts/onParts.ts';
import { tablesToWrite } from './parts/partShelf.ts';
import type { BenchPorts } from './ports.ts';
import { readDocument } from './readDocument.ts';
import { SAFE_WORDS } from './safeWords.ts';
import { createSectionStore } from './sectionStore.ts';
import { createHoverStore, createSessionStore, type SessionChoices } from './sessionStore.ts';
import { putDownWithoutPicture } from './withoutPicture.ts';

/** Mm of bay seen around a finding: enough to know where one is, close enough to see what touches. */
const FINDING_SPAN_MM = 260;

/** The whole of the window's state and everything it can do. Panels and scene read its stores and call its actions. */
export function createBench(ports: BenchPorts, choices: SessionChoices) {
  const document = createDocumentStore();
  const session = createSessionStore(choices);
  const hover = createHoverStore();
  const jobs = createJobsStore(ports.jobs);
  const hand = createHandStore();
  const drawer = createDrawerStore();
  const section = createSectionStore();
  const onMeasure = createOnMeasure(hand);
  const onSquareUp = createOnSquareUp({ document, hand });
  const { desktop } = ports;
  const byHand = createByHand({ document, session, hover, jobs, hand, host: ports.jobs });
  const onBay = createOnBay({ document, jobs, hand });
  /** The project as it stands, with its files, for a job. */
  const filesNow = (): { files: ProjectFiles; project: Project } | null => {
    const { open } = document.getState();
    if (open === null) return null;
    const project = open.history.present;
    return {
      project,
      files: { projectText: serialiseProject(project), files: open.files.files, today: ports.today() },
    };
  };

  const onBuilt = createOnBuilt({ document, jobs, filesNow });
  const onRod = createOnRod({ document, session, jobs, hand, desktop, onBuilt });
  const onFitting = createOnFitting({ document, session });
  const onRuns = createOnRuns({ document, session, hand });
  const onParts = createOnParts({ document, drawer, jobs, desktop });
  const guide = createGuide();
  followGuide(guide, { document, session, hover });
  const onPreview = createOnPreview({ document, session, ports, filesNow });
  const onSweep = createOnSweep({ document, session, jobs: ports.jobs });
  putDownWithoutPicture({ hand, session, jobs });
  measureJoined({ document, jobs, joined: keepAnswers(document), filesNow });
  keepPicture(document, jobs, filesNow);
  session.subscribe(({ run, step }, before) => {
    if (run !== before.run) byHand.letGo();
    if (run !== before.run) onRod.clear();
    if (run !== before.run)
      session.set(({ pose }) => ({ ghost: null, pose: pose?.kind === 'rock' ? pose : null, eyeMm: null }));
    if (run !== before.run) hand.set({ support: null, stretch: null, stating: false });
    if (run !== before.run || step !== before.step) hand.take(NO_TOOL);
  });

  /** The mesh of the open project, read for the picture; when that was stopped it can be asked for again. */
  const readBay = async (): Promise<void> => {
    const now = filesNow();
    if (now === null) return;
    const output = await jobs.work('Opening the bay', 'openProject', now.files);
    if (output !== null) document.bayRead(output.bay, output.warnings);
  };

  const leaving = createLeaving({ document, save: () => save() });

  /** Another project is not put on the bench while work is under way on this one: what it answers would be of the other. */
  const isFree = (): boolean => {
    if (jobs.getState().current === null) return true;
    jobs.tell('Something is being worked on', ['Let it come to its end or cancel it, then open the other project.']);
    return false;
  };

  const take = async (got: Result<OpenedProject> | null, isNew = false): Promise<void> => {
    if (got === null) return;
    if (!isFree()) return;
    if (!got.ok) return jobs.tellProblems('The project could not be opened', got.problems, SAFE_WORDS.leftAlone);
    const read = readDocument(got.value);
    if (!read.ok) return jobs.tellProblems('The project has problems', read.problems, SAFE_WORDS.leftAlone);
    const { project, sheets } = read.value;
    // A caliper that was taken up while the first bay was on its way stays in the hand.
    const measures = document.getState().open === null && hand.getState().tool.kind === 'measure';
    if (!(await leaving.mayGo()) || !isFree()) return;
    await (isNew ? desktop.beginNew() : desktop.taken());
    byHand.letGo();
    onRod.clear();
    hand.empty();
    drawer.empty();
    section.empty();
    onWays.clear();
    onMends.clear();
    onMeasure.clear();
    onNewBay.clear();
    document.opened(project, got.value, sheets, isNew);
    session.set({
      step: project.runs.length === 0 ? 'bay' : 'runs',
      run: project.runs[0]?.id ?? null,
      finding: null,
      parts: {},
    });
    hover.setState({ place: null });
    if (measures) onMeasure.begin();
    await readBay();
  };

  const onRecent = createOnRecent({
    desktop,
    open: async (id) => (isFree() ? take(await desktop.openRecent(id)) : undefined),
  });

  const onNewBay = createOnNewBay({
    jobs,
    desktop,
    take: (project) => take(good(project), true),
  });

  const lay = async (runs?: readonly string[]): Promise<void> => {
    const now = filesNow();
    const open = document.getState().open;
    if (now === null || open === null) return;
    const title = runs === undefined ? 'Laying all runs' : 'Laying this run';
    const earlier = runs !== undefined && open.report !== null ? { earlier: open.report } : {};
    const input = { ...now.files, ...(runs === undefined ? {} : { runs }), ...earlier };
    const report = await jobs.work(title, 'layRuns', input);
    if (report !== null) document.reported(report, now.project, runs);
  };

  const onWays = createOnWays({
    document,
    jobs,
    filesNow,
    settle: async (run, along) => {
      const hasHose = document.getState().open?.report?.lays.some((l) => l.run === run && l.outcome !== 'no-way');
      return hasHose === true ? byHand.settle(run, along) : lay([run]);
    },
  });
  session.subscribe(({ run }, before) => run !== before.run && onWays.clear());
  const onMends = createOnMends({ document, jobs, filesNow });

  /** Lays one run with every pair of ends that fits; the other runs stay where they were laid. */
  const tryEnds = async (run: string): Promise<void> => {
    const now = filesNow();
    if (now === null) return;
    const report = document.getState().open?.report;
    const earlier = report === null || report === undefined ? {} : { earlier: report };
    const trial = await jobs.work('Trying other ends', 'endTrial', { ...now.files, run, ...earlier });
    if (trial !== null) document.tried(trial, now.project);
  };

  /** Puts a pair of ends on a run, one step back, and lays it. */
  const fitEnds = (run: string, ends: { readonly a: string; readonly b: string }): Promise<void> => {
    document.edit('both ends', (project) => setEnds(project, run, ends));
    return lay([run]);
  };

  /** Says what became of a save; true when it was made. */
  const tellSaved = (what: string, done: Result<Saved>): boolean => {
    if (!done.ok) jobs.tellProblems(`The ${what} could not be saved`, done.problems, SAFE_WORDS.stillHere);
    else if (done.value.kind === 'saved') jobs.tell(`Saved: ${what}`, [done.value.where], 'done');
    return done.ok && done.value.kind === 'saved';
  };

  const save = async (): Promise<boolean> => {
    const now = filesNow();
    const { open } = document.getState();
    if (now === null || open === null) return false;
    const { added, changed } = tablesToWrite(open.shelf.tableFilesOf(now.project), open.onDisk);
    const meshes = meshesToWrite(now.project, open.files.files, open.onDisk);
    const done = await desktop.saveProject(now.files.projectText, [...meshes, ...added], changed);
    const isSaved = tellSaved('project', done);
    if (isSaved) document.savedAs(now.project);
    return isSaved;
  };

  /** Draws the papers that the user asked for and hands them over. */
  const papers = async (wanted: readonly PaperName[]): Promise<void> => {
    const now = filesNow();
    const report = document.getState().open?.report;
    if (now === null || report === null || report === undefined) return;
    const fonts = await ports.paperFonts();
    const input = { ...now.files, report, papers: wanted, fonts, printedOn: ports.today() };
    const output = await jobs.work('Drawing the papers', 'makeSheets', input);
    if (output === null) return;
    const { files } = output;
    if (files.length === 0) return jobs.tell('No such paper', ['There is nothing to put on it.']);
    const [only] = files;
    const done =
      files.length === 1 && only !== undefined
        ? await desktop.saveFile(plainName(only.path), only.bytes)
        : await desktop.saveFiles(files);
    tellSaved('papers', done);
  };

  /** Flies to the whole of a laid run. */
  const showRun = (runId: string): void => {
    const lay = document.getState().open?.report?.lays.find((l) => l.run === runId);
    const points = lay?.centreline.points ?? [];
    const first = points[0];
    if (first === undefined) return;
    const middle = placeInMiddle(points);
    session.flyTo(middle, 2 * Math.max(FINDING_SPAN_MM / 2, ...points.map((point) => distance(point, middle))));
  };

  /** Shows a finding: its run, its place on the straight view, and the camera there. */
  const goToFinding = ({ number, finding }: NumberedFinding): void => {
    session.set({ run: finding.run, finding: number });
    if (finding.at === undefined) {
      // The mark of the finding before would stand for this one.
      hover.setState({ place: null });
      showRun(finding.run);
      return;
    }
    hover.setState({ place: { run: finding.run, arcLengthMm: finding.at.arcLengthMm, from: 'finding' } });
    session.flyTo(finding.at.point, FINDING_SPAN_MM);
  };

  return {
    document,
    session,
    hover,
    jobs,
    hand,
    drawer,
    section,
    onMeasure,
    onNewBay,
    onSquareUp,
    onParts,
    onPreview,
    onSweep,
    guide,
    byHand,
    onBay,
    onBuilt,
    onRod,
    leaving,
    onFitting,
    onRecent,
    onRuns,
    onWays,
    onMends,
    openGiven: async (): Promise<void> => take(await desktop.openGiven()),
    openDemo: async (): Promise<void> => take(await desktop.openDemo()),
    /** The example bay with the guide beside it. */
    firstLay: async (): Promise<void> => {
      const before = document.getState().open;
      await take(await desktop.openDemo());
      if (document.getState().open !== before) guide.setState({ at: 0 });
    },
    openChosen: async (): Promise<void> => (isFree() ? take(await desktop.chooseProject()) : undefined),
    readBay,
    layAll: (): Promise<void> => lay(),
    layRun: (run: string): Promise<void> => lay([run]),
    tryEnds,
    fitEnds,
    save,
    goToFinding,
    showRun,
    papers,
  };
}

/** The meshes of a bay that do not stand beside its project yet. */
function meshesToWrite(
  project: Project,
  files: readonly NamedFile[],
  onDisk: readonly NamedFile[],
): readonly NamedFile[] {
  const standing = new Set(onDisk.map(({ path }) => path));
  const meshes = new Set(project.bay.meshes.map(({ path }) => path));
  return files.filter(({ path }) => meshes.has(path) && !standing.has(path));
}

/** Middle of the box around some points. */
function placeInMiddle(points: readonly Vec3[]): Vec3 {
  const middle = (axis: 0 | 1 | 2): number => {
    const along = points.map((point) => point[axis]);
    return (Math.min(...along) + Math.max(...along)) / 2;
  };
  return [middle(0), middle(1), middle(2)];
}

/** A file's own name, without the folders before it. */
function plainName(path: string): string {
  return path.slice(path.lastIndexOf('/') + 1);
}

export type Bench = ReturnType<typeof createBench>;
