import type { Vec3 } from '../../shared/base/vec3.ts';
import type { HandChange } from '../../shared/document/hand/handChange.ts';
import type { Lay } from '../../shared/document/lay/schema.ts';
import type { Project, Run, Support } from '../../shared/document/project/schema.ts';
import { serialiseProject } from '../../shared/document/project/serialiseProject.ts';
import { SUPPORT_WORDS } from '../../shared/document/wording/bayWords.ts';
import type { DocumentStore, OpenDocument } from './documentStore.ts';
import { addLock, lockOf, movedLock, removeLock, type Stretch } from './edits/lockEdits.ts';
import { changeSupport, putSupport, removeSupport, reorderSupport, type SupportKind } from './edits/supportEdits.ts';
import { type HandMoves, handMoves } from './handMoves.ts';
import { type HandStore, type Hold, NO_TOOL } from './handStore.ts';
import type { JobsStore } from './jobsStore.ts';
import { nearestArc, placeAt } from './layPlaces.ts';
import type { BenchPorts } from './ports.ts';
import { layOf } from './runState.ts';
import { SAFE_WORDS } from './safeWords.ts';
import type { HoverStore, SessionStore } from './sessionStore.ts';
import { createSettling, hasHose } from './settling.ts';
import { hosePlace, orderAt, rounded, supportAt } from './supportPlaces.ts';

interface HandNeeds {
  readonly document: DocumentStore;
  readonly session: SessionStore;
  readonly hover: HoverStore;
  readonly jobs: JobsStore;
  readonly hand: HandStore;
  readonly host: BenchPorts['jobs'];
}

/** What the hand does to a run: take hold of the hose, put and move what holds it, lock a stretch; each is one step back. */
export function createByHand({ document, session, hover, jobs, hand, host }: HandNeeds) {
  let moves: HandMoves | null = null;
  const settling = createSettling({ document, jobs, hand });
  const { settle, edit } = settling;

  /** The chosen run with its lay. */
  const chosen = (): { open: OpenDocument; project: Project; run: Run; lay: Lay | undefined } | null => {
    const { open } = document.getState();
    const project = open?.history.present;
    const run = project?.runs.find(({ id }) => id === session.getState().run);
    return open === null || project === undefined || run === undefined
      ? null
      : { open, project, run, lay: layOf(open, run.id) };
  };

  /** Puts a support on the chosen run: at the place pointed at, else in the middle of its hose. */
  const put = (kind: SupportKind): void => {
    const here = chosen();
    const { place } = hover.getState();
    if (here === null) jobs.tell('No run is chosen', ['Choose the run whose hose is to be held.']);
    else putAt(kind, place !== null && place.run === here.run.id ? place.arcLengthMm : null);
  };

  const putAt = (kind: SupportKind, arcLengthMm: number | null): void => {
    const here = chosen();
    const place = here === null ? null : hosePlace(here.project, here.run, here.lay, arcLengthMm);
    if (here === null || place === null) return;
    const support = supportAt(here.run, kind, place);
    hand.set({ support: support.id, tool: NO_TOOL });
    const order = orderAt(here.run, here.lay, arcLengthMm);
    edit(here.run.id, `put ${SUPPORT_WORDS[kind].toLowerCase()}`, (project) =>
      putSupport(project, here.run.id, order, support),
    );
  };

  /** Takes hold of the chosen run's hose at a place, or of one of its supports. */
  const grasp = (at: Hold['at'], to: Vec3): void => {
    const here = chosen();
    if (here === null) return;
    const { current } = jobs.getState();
    if (settling.isUnderWay()) settling.stop();
    else if (current !== null) {
      jobs.tell('The bench is at work', ['Take hold of the hose when it is done, or cancel it first.']);
      return;
    }
    letGo();
    settling.notYet();
    hand.set({ hold: { run: here.run.id, at, to, clamp: false, released: false }, trouble: null });
    // What will hold a hose that is not laid yet is moved by itself.
    if (here.open.report === null || !hasHose(here.lay)) return;
    const files = { projectText: serialiseProject(here.project), files: here.open.files.files };
    moves = handMoves(
      host,
      { ...files, run: here.run.id, report: here.open.report },
      {
        shape: (shape) => hand.set({ shape, trouble: null }),
        trouble: (trouble) => hand.set({ trouble }),
      },
    );
  };

  const drag = (to: Vec3, clamp: boolean, axis?: Vec3): void => {
    const { hold } = hand.getState();
    const here = chosen();
    if (hold === null || hold.released || here === null) return;
    const moved = { ...hold, to, clamp, ...(axis === undefined ? {} : { axis }) };
    hand.set({ hold: moved });
    moves?.move(changeOf(moved, here.run));
  };

  /** Drags a support of the chosen run along its hose as it was laid, to a place of it. */
  const dragAlong = (supportId: string, arcLengthMm: number): void => {
    const here = chosen();
    const place = here === null ? null : hosePlace(here.project, here.run, here.lay, arcLengthMm);
    if (place === null) return;
    if (hand.getState().hold === null) grasp({ support: supportId }, place.point);
    drag(place.point, false, place.along);
  };

  /** Slides the chosen support along the hose, mm towards END B, or towards END A below zero. */
  const slide = (byMm: number): void => {
    const here = chosen();
    const support = here?.run.supports.find(({ id }) => id === hand.getState().support);
    if (here?.lay === undefined || support === undefined) return;
    const place = hosePlace(here.project, here.run, here.lay, nearestArc(here.lay.centreline, support.point) + byMm);
    if (place === null) return;
    const to = placedAt(support, place.point, place.along);
    edit(here.run.id, 'slide support', (project) => changeSupport(project, here.run.id, support.id, to), true);
  };

  /** Lets go without a trace. */
  const letGo = (): void => {
    moves?.drop();
    moves = null;
    const { hold } = hand.getState();
    hand.set({ hold: null, shape: null, trouble: null });
    if (hold !== null) settling.soon();
  };

  /** Lets go and keeps what was done: a waypoint or a clamp where the hose was held, or the support where it is now. */
  const release = async (): Promise<void> => {
    const { hold } = hand.getState();
    if (hold === null || hold.released) return;
    const mine = moves;
    hand.set({ hold: { ...hold, released: true } });
    await mine?.settled();
    const here = chosen();
    if (moves !== mine || hand.getState().hold === null || here === null) return;
    const { shape } = hand.getState();
    keep(hold, here.run, here.lay);
    mine?.drop();
    moves = null;
    hand.set({ hold: null });
    await settling.ended();
    await settle(here.run.id, shape?.centreline.points);
    // Taken in the hand again meanwhile, it is that shape which is shown.
    if (moves === null) hand.set({ shape: null, trouble: null });
  };

  const keep = (hold: Hold, run: Run, lay: Lay | undefined): void => {
    if ('support' in hold.at) keepMoved(hold, hold.at.support, run);
    else keepPulled(hold, hold.at.arcLengthMm, run, lay);
  };

  const keepMoved = ({ to, axis }: Hold, supportId: string, run: Run): void => {
    const support = run.supports.find(({ id }) => id === supportId);
    if (support === undefined) return;
    settling.change(run.id, 'move support', (project) =>
      changeSupport(project, run.id, supportId, placedAt(support, to, axis)),
    );
  };

  const keepPulled = (hold: Hold, arcLengthMm: number, run: Run, lay: Lay | undefined): void => {
    const held = hand.getState().shape?.hold;
    const laid = lay === undefined ? null : placeAt(lay.centreline, arcLengthMm);
    const along = held?.axis ?? laid?.along;
    if (along === undefined) return;
    const kind = hold.clamp ? 'clamp' : 'waypoint';
    const support = supportAt(run, kind, { point: held?.point ?? hold.to, along });
    hand.set({ support: support.id });
    settling.change(run.id, `pull hose to a ${kind}`, (project) =>
      putSupport(project, run.id, orderAt(run, lay, arcLengthMm), support),
    );
  };

  /** Locks the stretch that is marked along the chosen run's hose. */
  const lock = (stretch: Stretch | null = hand.getState().stretch): void => {
    const here = chosen();
    if (here?.lay === undefined || stretch === null) {
      jobs.tell('Nothing to lock', ['Mark a stretch first: drag along the rule under the straight hose.']);
      return;
    }
    const { lay, run } = here;
    const made = lockOf(lay, run, stretch);
    if (!made.ok) {
      jobs.tellProblems('This stretch cannot be locked', made.problems, SAFE_WORDS.staysFree);
      return;
    }
    edit(run.id, 'lock stretch', (project) => addLock(project, lay, made.value));
    hand.set({ stretch: null });
  };

  /** Gives a lock of the chosen run other ends; the hose stays as it lies, and what was locked before is let go. */
  const relock = (lockId: string, stretch: Stretch, joinLast = false): void => {
    hand.set({ slidLock: null });
    const here = chosen();
    if (here?.lay === undefined) return;
    const { lay, run } = here;
    const made = movedLock(lay, run, lockId, stretch);
    if (!made.ok) {
      jobs.tellProblems('This stretch cannot be locked', made.problems, SAFE_WORDS.staysFree);
      return;
    }
    edit(
      run.id,
      'slide locked stretch',
      (project) => addLock(removeLock(project, run.id, lockId), lay, made.value),
      joinLast,
    );
  };

  return {
    settle,
    edit,
    relock,
    put,
    putAt,
    remove: (runId: string, supportId: string): void => {
      hand.set({ support: null });
      edit(runId, 'remove support', (project) => removeSupport(project, runId, supportId));
    },
    reorder: (runId: string, supportId: string, by: 1 | -1): void =>
      edit(runId, 'order of supports', (project) => reorderSupport(project, runId, supportId, by)),
    grasp,
    drag,
    dragAlong,
    slide,
    letGo,
    release,
    lock,
    unlock: (runId: string, lockId: string): void =>
      edit(runId, 'unlock stretch', (project) => removeLock(project, runId, lockId)),
  };
}

export type ByHand = ReturnType<typeof createByHand>;

/** A support's new place; what holds the hose takes its direction there, where one is given. */
function placedAt(support: Support, to: Vec3, axis: Vec3 | undefined): Pick<Support, 'point' | 'axis'> {
  const turned = axis !== undefined && support.kind !== 'waypoint';
  return { point: rounded(to, 100), ...(turned ? { axis: rounded(axis, 1e6) } : {}) };
}

function changeOf({ at, to, axis }: Hold, run: Run): HandChange {
  if (!('support' in at)) return { pull: { arcLengthMm: at.arcLengthMm, to } };
  const supports = run.supports.map((s): Support => (s.id === at.support ? { ...s, ...placedAt(s, to, axis) } : s));
  return { supports };
}
