import type { Lay } from '../../shared/document/lay/schema.ts';
import type { Run } from '../../shared/document/project/schema.ts';
import type { Bench } from './bench.ts';
import { middleThird } from './edits/lockEdits.ts';
import type { SupportKind } from './edits/supportEdits.ts';
import { orderFindings } from './findingOrder.ts';
import { looksForPlace, NO_TOOL } from './handStore.ts';
import { layOf } from './runState.ts';
import { type CameraNudge, STEPS } from './sessionStore.ts';
import { nextWrench } from './showWrench.ts';

/** One thing the keyboard does. `key` is as the browser names it; `shown` as it is printed on the list. */
export interface KeyAction {
  readonly shown: string;
  readonly words: string;
  fits(event: KeyPress): boolean;
  act(bench: Bench): void;
}

/** The part of a keyboard event that decides. */
export interface KeyPress {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly shiftKey: boolean;
}

const STILL: CameraNudge = { aroundDeg: 0, overDeg: 0, nearer: 1, rightShare: 0, upShare: 0 };

/** Share of the picture's height by which one press moves it. */
const SIDE_STEP = 0.08;

const plain = (key: string) => (event: KeyPress) => event.key === key && !event.ctrlKey && !event.metaKey;
const withControl =
  (key: string, shift = false) =>
  (event: KeyPress) =>
    event.key.toLowerCase() === key && (event.ctrlKey || event.metaKey) && event.shiftKey === shift;

/** Moves the look over the bay, as one would slide a drawing under a lens. */
const SIDEWAYS: readonly KeyAction[] = (
  [
    ['ArrowLeft', 'move the look left', { rightShare: -SIDE_STEP }],
    ['ArrowRight', 'move the look right', { rightShare: SIDE_STEP }],
    ['ArrowUp', 'move the look up', { upShare: SIDE_STEP }],
    ['ArrowDown', 'move the look down', { upShare: -SIDE_STEP }],
  ] as const
).map(([key, words, by]) => ({
  shown: `Shift ${key}`,
  words,
  fits: (event) => event.key === key && event.shiftKey && !event.ctrlKey && !event.metaKey,
  act: nudge(by),
}));

/** Everything the keyboard does in the window, in the order of the list. Tab, arrows, Enter and Space work as anywhere. */
export const KEY_ACTIONS: readonly KeyAction[] = [
  ...STEPS.map((step, i) => ({
    shown: String(i + 1),
    words: `step: ${step}`,
    fits: plain(String(i + 1)),
    act: (bench: Bench) => bench.session.goTo(step),
  })),
  { shown: 'j', words: 'next run', fits: plain('j'), act: (bench) => stepRun(bench, 1) },
  { shown: 'k', words: 'run before', fits: plain('k'), act: (bench) => stepRun(bench, -1) },
  { shown: 'n', words: 'next finding: fly to it', fits: plain('n'), act: (bench) => stepFinding(bench, 1) },
  { shown: 'p', words: 'finding before', fits: plain('p'), act: (bench) => stepFinding(bench, -1) },
  { shown: 'Shift R', words: 'try what would mend the chosen run', fits: plain('R'), act: mendChosen },
  { shown: 'l', words: 'lay this run', fits: plain('l'), act: layChosen },
  { shown: 'Shift L', words: 'lay all runs', fits: plain('L'), act: (bench) => void bench.layAll() },
  { shown: 'c', words: 'clamp on the hose, where pointed at', fits: plain('c'), act: put('clamp') },
  { shown: 'h', words: 'pass-through on the hose', fits: plain('h'), act: put('pass-through') },
  { shown: 'v', words: 'waypoint on the hose', fits: plain('v'), act: put('waypoint') },
  { shown: 'b', words: 'next of what holds the hose', fits: plain('b'), act: stepSupport },
  { shown: ',', words: 'slide it 1 mm towards END A', fits: plain(','), act: ({ byHand }) => byHand.slide(-1) },
  { shown: '.', words: 'slide it 1 mm towards END B', fits: plain('.'), act: ({ byHand }) => byHand.slide(1) },
  { shown: 'g', words: 'mark a stretch of the hose; again: lock it', fits: plain('g'), act: markOrLock },
  { shown: 'e', words: 'let this run settle where it lies', fits: plain('e'), act: settleChosen },
  { shown: 'r', words: 'new run', fits: plain('r'), act: (bench) => bench.onRuns.state() },
  { shown: 'i', words: 'the drawer of parts', fits: plain('i'), act: toggleDrawer },
  { shown: 'o', words: 'new port: click the bay', fits: plain('o'), act: newPort },
  { shown: 'm', words: 'move the chosen port: click the bay', fits: plain('m'), act: movePort },
  { shown: 'y', words: 'END B as the clock read backwards would have it', fits: plain('y'), act: toggleBackwards },
  { shown: ']', words: 'next extreme of the engine’s movement', fits: plain(']'), act: stepPose(1) },
  { shown: '[', words: 'extreme before; at rest after the first', fits: plain('['), act: stepPose(-1) },
  { shown: '}', words: 'order of fitting: next hose on', fits: plain('}'), act: ({ onFitting }) => onFitting.step(1) },
  {
    shown: '{',
    words: 'order of fitting: last hose off',
    fits: plain('{'),
    act: ({ onFitting }) => onFitting.step(-1),
  },
  { shown: 'Shift P', words: 'order of fitting: play, pause', fits: plain('P'), act: playFitting },
  { shown: 'Shift E', words: 'look along the chosen hose from inside', fits: plain('E'), act: toggleEye },
  { shown: 'q', words: 'pick points along a bent rod', fits: plain('q'), act: (bench) => bench.onRod.begin() },
  { shown: 'Backspace', words: 'take the last point of the rod back', fits: plain('Backspace'), act: pickLess },
  { shown: 'Delete', words: 'remove the chosen support or port', fits: plain('Delete'), act: removeChosen },
  {
    shown: 'Escape',
    words: 'let go, put the tool down, cancel the work, close a note or the drawer',
    fits: plain('Escape'),
    act: stopOrClose,
  },
  { shown: 'a', words: 'walk round the bay', fits: plain('a'), act: nudge({ aroundDeg: -15 }) },
  { shown: 'd', words: 'walk round it the other way', fits: plain('d'), act: nudge({ aroundDeg: 15 }) },
  { shown: 'w', words: 'look from higher up', fits: plain('w'), act: nudge({ overDeg: -10 }) },
  { shown: 's', words: 'look from lower down', fits: plain('s'), act: nudge({ overDeg: 10 }) },
  { shown: '+', words: 'nearer', fits: plain('+'), act: nudge({ nearer: 1.25 }) },
  { shown: '-', words: 'further off', fits: plain('-'), act: nudge({ nearer: 0.8 }) },
  ...SIDEWAYS,
  {
    shown: 'z',
    words: 'with a tool in the hand: mark the middle of the picture; again: take it',
    fits: plain('z'),
    act: aimAtMiddle,
  },
  { shown: 'f', words: 'whole bay', fits: plain('f'), act: fitBay },
  { shown: 'x', words: 'see through the bay', fits: plain('x'), act: toggleSeeThrough },
  { shown: 'Shift H', words: 'colours of heat: running, just off, none', fits: plain('H'), act: nextHeat },
  { shown: 'Shift W', words: 'room of a wrench: END A, END B, none', fits: plain('W'), act: nextWrench },
  { shown: 'Shift X', words: 'cut the bay open', fits: plain('X'), act: toggleSection },
  {
    shown: 'Shift M',
    words: 'measure between two places',
    fits: plain('M'),
    act: ({ onMeasure }) => onMeasure.begin(),
  },
  { shown: 'u', words: 'mm or inches first', fits: plain('u'), act: toggleUnits },
  { shown: 'Shift G', words: 'large targets, for gloves', fits: plain('G'), act: toggleGloves },
  { shown: 't', words: 'light or dark', fits: plain('t'), act: toggleTheme },
  { shown: 'Ctrl Z', words: 'undo', fits: withControl('z'), act: (bench) => bench.document.undo() },
  { shown: 'Ctrl Shift Z', words: 'redo', fits: withControl('z', true), act: (bench) => bench.document.redo() },
  { shown: 'Ctrl S', words: 'save the project', fits: withControl('s'), act: (bench) => void bench.save() },
  { shown: 'Ctrl O', words: 'open a project', fits: withControl('o'), act: (bench) => void bench.openChosen() },
  { shown: 'Shift O', words: 'projects opened lately', fits: plain('O'), act: toggleRecent },
  { shown: '?', words: 'this list', fits: plain('?'), act: (bench) => bench.session.set({ keysShown: true }) },
];

function playFitting({ onFitting, session }: Bench): void {
  if (onFitting.getState().plays) onFitting.pause();
  else {
    session.goTo('checks');
    onFitting.play();
  }
}

function toggleRecent({ onRecent, document }: Bench): void {
  if (document.getState().open === null) return;
  if (onRecent.getState().isOpen) onRecent.shut();
  else void onRecent.show();
}

function nudge(by: Partial<CameraNudge>): (bench: Bench) => void {
  return ({ session }) => session.set({ nudge: { ...STILL, ...by } });
}

/** Tools that look for a place of the bay find it in the middle of the picture, for who does not point. */
function aimAtMiddle({ hand, jobs }: Bench): void {
  if (looksForPlace(hand.getState().tool)) hand.set(({ middle }) => ({ middle: middle + 1 }));
  else
    jobs.tell('No tool in the hand', ['Take one up first, such as a new port (key o) or the measure (key Shift M).']);
}

function stepRun({ session, document }: Bench, by: number): void {
  const runs = document.getState().open?.history.present.runs ?? [];
  const at = runs.findIndex((run) => run.id === session.getState().run);
  const next = runs[(at + by + runs.length) % Math.max(1, runs.length)];
  if (next !== undefined) session.choose(next.id);
}

function stepFinding(bench: Bench, by: number): void {
  const findings = orderFindings(bench.document.getState().open?.report?.findings ?? []);
  const at = bench.session.getState().finding ?? (by > 0 ? 0 : 1);
  const next = findings[(at - 1 + by + findings.length) % Math.max(1, findings.length)];
  if (next !== undefined) bench.goToFinding(next);
}

function layChosen({ session, layRun }: Bench): void {
  const { run } = session.getState();
  if (run !== null) void layRun(run);
}

function mendChosen({ session, onMends }: Bench): void {
  const { run } = session.getState();
  if (run === null) return;
  session.goTo('runs');
  void onMends.look(run);
}

function put(kind: SupportKind): (bench: Bench) => void {
  return ({ byHand }) => byHand.put(kind);
}

function chosenRun({ document, session }: Bench): Run | undefined {
  return document.getState().open?.history.present.runs.find(({ id }) => id === session.getState().run);
}

function stepSupport(bench: Bench): void {
  const supports = chosenRun(bench)?.supports ?? [];
  const at = supports.findIndex(({ id }) => id === bench.hand.getState().support);
  const next = supports[(at + 1) % Math.max(1, supports.length)];
  if (next === undefined) return;
  bench.session.goTo('runs');
  bench.hand.set({ support: next.id });
}

function markOrLock(bench: Bench): void {
  const { open } = bench.document.getState();
  const lay = open === null ? undefined : layOf(open, bench.session.getState().run ?? '');
  bench.session.goTo('runs');
  if (bench.hand.getState().stretch !== null || lay === undefined || lay.outcome === 'no-way') bench.byHand.lock();
  else bench.hand.set({ stretch: middleThird(lay) });
}

function settleChosen(bench: Bench): void {
  const lay = chosenLay(bench, 'No hose to settle');
  if (lay !== undefined) void bench.byHand.settle(lay.run);
}

/** The chosen run's lay; where there is none, that is said, and what to do. */
function chosenLay({ document, session, jobs }: Bench, without: string): Lay | undefined {
  const { open } = document.getState();
  const lay = open === null ? undefined : layOf(open, session.getState().run ?? '');
  if (open !== null && lay === undefined) jobs.tell(without, ['Choose a run and lay it first: key l.']);
  return lay;
}

function newPort({ session, hand }: Bench): void {
  session.goTo('ports');
  hand.take({ kind: 'seat', port: null });
}

function movePort({ session, hand }: Bench): void {
  const { port } = hand.getState();
  if (session.getState().step === 'ports' && port !== null) hand.take({ kind: 'seat', port });
}

/** On the ports' step the chosen port, else the chosen support. */
function removeChosen(bench: Bench): void {
  const { port, support } = bench.hand.getState();
  const run = chosenRun(bench);
  if (bench.session.getState().step === 'ports') {
    if (port !== null) bench.onBay.remove(port);
  } else if (support !== null && run !== undefined) bench.byHand.remove(run.id, support);
}

/** Through the extremes of the chosen run's rock; the first is at rest, which is no pose. */
function stepPose(by: number): (bench: Bench) => void {
  return (bench) => {
    const { session, jobs } = bench;
    const { pose } = session.getState();
    const lay = chosenLay(bench, 'No hose to move');
    if (lay === undefined) return;
    const { rock } = lay;
    if (rock === undefined) {
      jobs.tell('Nothing this hose hangs on moves', [
        'Say how a body moves on its mounts in step 1, and lay it again.',
      ]);
      return;
    }
    const count = rock.extremes.length;
    const at = ((pose?.kind === 'rock' ? pose.extreme : 0) + by + count) % count;
    session.set({ pose: at === 0 ? null : { kind: 'rock', extreme: at } });
  };
}

function toggleEye(bench: Bench): void {
  const { session } = bench;
  if (session.getState().eyeMm !== null) session.set({ eyeMm: null });
  else if (chosenLay(bench, 'No hose to look along') !== undefined) session.set({ step: 'runs', eyeMm: 0 });
}

function toggleBackwards(bench: Bench): void {
  const { session, jobs } = bench;
  const lay = chosenLay(bench, 'No clock to read backwards');
  if (lay === undefined) return;
  if (lay.clock.kind !== 'angle') {
    jobs.tell('No clock to read backwards', ['An end of this hose is straight: it goes on at any clock.']);
    return;
  }
  session.set(({ ghost }) => ({ ghost: ghost === 'backwards' ? null : 'backwards' }));
}

function pickLess({ hand, onRod }: Bench): void {
  if (hand.getState().tool.kind === 'rod') onRod.takeBack();
}

function stopOrClose(bench: Bench): void {
  const { session, jobs, hand, byHand, drawer, onMeasure, section } = bench;
  if (session.getState().keysShown) session.set({ keysShown: false });
  else if (bench.leaving.getState().asked !== null) bench.leaving.answer('stay');
  else if (bench.onRecent.getState().isOpen) bench.onRecent.shut();
  else if (drawer.getState().isOpen) shutDrawer(bench);
  else if (hand.getState().hold !== null) byHand.letGo();
  else if (hand.getState().slidLock !== null) hand.set({ slidLock: null });
  else if (hand.getState().tool.kind === 'measure') onMeasure.clear();
  else if (hand.getState().tool.kind !== 'none') hand.take(NO_TOOL);
  else if (hand.getState().stretch !== null) hand.set({ stretch: null });
  else if (hand.getState().stating) hand.set({ stating: false });
  else if (section.getState().isOpen) section.shut();
  else if (session.getState().eyeMm !== null) session.set({ eyeMm: null });
  else if (session.getState().pose !== null) session.set({ pose: null });
  else if (bench.onFitting.getState().on !== null) bench.onFitting.leave();
  else if (jobs.getState().current !== null) jobs.cancel();
  else if (bench.guide.getState().at !== null) bench.guide.setState({ at: null });
  else jobs.dismiss();
}

function toggleDrawer({ drawer, onParts }: Bench): void {
  if (drawer.getState().isOpen) onParts.shut();
  else onParts.open();
}

/** What lies on top in the drawer first, then the drawer. */
function shutDrawer({ drawer, onParts }: Bench): void {
  const { incoming, measuring } = drawer.getState();
  if (incoming !== null) onParts.leaveIn();
  else if (measuring) drawer.set({ measuring: false });
  else onParts.shut();
}

function fitBay({ session }: Bench): void {
  session.set((state) => ({ fitSerial: state.fitSerial + 1 }));
}

function toggleSeeThrough({ session }: Bench): void {
  session.set((state) => ({ seeThrough: !state.seeThrough }));
}

function nextHeat({ session }: Bench): void {
  session.set(({ heat }) => ({ heat: heat === null ? 'running' : heat === 'running' ? 'soak' : null }));
}

function toggleSection({ section }: Bench): void {
  if (section.getState().isOpen) section.shut();
  else section.open();
}

function toggleUnits({ session }: Bench): void {
  session.set((state) => ({ units: state.units === 'mm' ? 'inch' : 'mm' }));
}

function toggleGloves({ session }: Bench): void {
  session.set(({ gloves }) => ({ gloves: !gloves }));
}

function toggleTheme({ session }: Bench): void {
  session.set((state) => ({ theme: state.theme === 'light' ? 'dark' : 'light' }));
}
