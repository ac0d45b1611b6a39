import { createStore } from 'zustand/vanilla';
import type { Vec3 } from '../../shared/base/vec3.ts';
import type { PaperName } from '../../shared/document/paper/paperNames.ts';
import type { HeatView } from './heatScale.ts';

/** The steps of the job, in the order they are done. */
export const STEPS = ['bay', 'ports', 'runs', 'checks', 'papers', 'bench'] as const;
export type Step = (typeof STEPS)[number];

export type Theme = 'light' | 'dark';
export type UnitChoice = 'mm' | 'inch';
/** How a bay part is shown: as it is, see-through (a cover), or taken off. */
export type PartView = 'shown' | 'ghost' | 'off';

/** A place along a run, from shoulder A. */
export interface HoverPlace {
  readonly run: string;
  readonly arcLengthMm: number;
  /** who put it there, so that the other side answers and the same side does not echo */
  readonly from: 'bay' | 'straight-view' | 'finding';
}

/**
 * A turn of the camera about what it looks at, in degrees; how much nearer it goes (1 = not at all); and how far what it
 * looks at moves to the right and up, in shares of the picture's height.
 */
export interface CameraNudge {
  readonly aroundDeg: number;
  readonly overDeg: number;
  readonly nearer: number;
  readonly rightShare: number;
  readonly upShare: number;
}

/** Another shape of the hoses: bodies at an extreme of their motion, by its number, or the chosen hose under pressure, by the number of its breath. */
export type BayPose =
  | { readonly kind: 'rock'; readonly extreme: number }
  | { readonly kind: 'breath'; readonly breath: number };

/** A place the camera is asked to fly to. `serial` makes asking twice for one place two flights. */
export interface Flight {
  readonly point: Vec3;
  readonly spanMm: number;
  readonly serial: number;
}

/** The papers that can be looked at before they are printed. */
export type LookedAtPaper = Extract<PaperName, `${string}.pdf`>;

export interface SessionState {
  readonly step: Step;
  readonly run: string | null;
  /** index into the report's findings, in their shown order */
  readonly finding: number | null;
  readonly theme: Theme;
  readonly units: UnitChoice;
  /** everything to be pressed is large, for a hand in a glove */
  readonly gloves: boolean;
  readonly parts: Readonly<Record<string, PartView>>;
  /** every shown part drawn see-through, so that hoses behind covers can be followed */
  readonly seeThrough: boolean;
  readonly flight: Flight | null;
  readonly nudge: CameraNudge | null;
  /** counts requests to fit the whole bay into the picture */
  readonly fitSerial: number;
  /** how the chosen hose might come out instead, drawn beside it; `null` = not drawn */
  readonly ghost: 'backwards' | 'built' | null;
  /** which of its other shapes the bay is shown in; `null` = as it stands at rest */
  readonly pose: BayPose | null;
  /** the bay coloured by the heat estimate; `null` = in its own looks */
  readonly heat: HeatView | null;
  /** the skin whose values are open; what it sweeps is drawn; `null` = none */
  readonly skin: string | null;
  /** at which nut of the chosen hose the swing of a wrench is drawn; `null` = at none */
  readonly wrench: 'a' | 'b' | null;
  /** mm from shoulder A of the chosen hose, where the eye rides along it; `null` = it looks at the bay from outside */
  readonly eyeMm: number | null;
  readonly keysShown: boolean;
  /** which paper is looked at while papers are the step */
  readonly paper: LookedAtPaper;
  /** the 3D picture: drawn, or why not */
  readonly picture: 'drawn' | 'no-webgl' | 'lost';
}

export interface SessionChoices {
  readonly theme: Theme;
  readonly units: UnitChoice;
  readonly gloves?: boolean;
}

export function createSessionStore(choices: SessionChoices) {
  const store = createStore<SessionState>(() => ({
    step: 'bay',
    run: null,
    finding: null,
    theme: choices.theme,
    units: choices.units,
    gloves: choices.gloves ?? false,
    parts: {},
    seeThrough: false,
    flight: null,
    nudge: null,
    fitSerial: 0,
    ghost: null,
    pose: null,
    heat: null,
    skin: null,
    wrench: null,
    eyeMm: null,
    keysShown: false,
    paper: 'build-sheets.pdf',
    picture: 'drawn',
  }));
  let flights = 0;
  return {
    ...store,
    goTo: (step: Step): void => store.setState({ step }),
    choose: (run: string | null): void => store.setState({ run, finding: null, wrench: null }),
    flyTo: (point: Vec3, spanMm: number): void => store.setState({ flight: { point, spanMm, serial: ++flights } }),
    showPart: (part: string, view: PartView): void =>
      store.setState((state) => ({ parts: { ...state.parts, [part]: view } })),
    set: store.setState,
  };
}

export type SessionStore = ReturnType<typeof createSessionStore>;

/**
 * The place under the pointer. A store of its own, since it changes with every pointer move: listeners move one marker
 * themselves, and no component is drawn anew for it.
 */
export function createHoverStore() {
  return createStore<{ place: HoverPlace | null }>(() => ({ place: null }));
}

export type HoverStore = ReturnType<typeof createHoverStore>;
