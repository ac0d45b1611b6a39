import { createStore } from 'zustand/vanilla';
import type { Vec3 } from '../../shared/base/vec3.ts';
import type { HandShape } from '../../shared/document/hand/handChange.ts';
import type { Stretch } from './edits/lockEdits.ts';
import type { SupportKind } from './edits/supportEdits.ts';

/** What the next press in the bay or on the straight view does. */
export type Tool =
  | { readonly kind: 'none' }
  /** a support on the chosen run's hose */
  | { readonly kind: 'put'; readonly support: SupportKind }
  /** a port on the bay: a new one, or one that is there put elsewhere */
  | { readonly kind: 'seat'; readonly port: string | null }
  /** points along a bent rod */
  | { readonly kind: 'rod' }
  /** two places to measure between */
  | { readonly kind: 'measure' }
  /** three places on a face that is truly level */
  | { readonly kind: 'level' }
  /** a bay part into a skin; null = out of all skins */
  | { readonly kind: 'skin'; readonly skin: string | null }
  /** a bay part on a body; null = on the chassis */
  | { readonly kind: 'body'; readonly body: string | null };

export const NO_TOOL: Tool = { kind: 'none' };

/** Whether a tool looks for a place of the bay. */
export function looksForPlace({ kind }: Tool): boolean {
  return kind !== 'none' && kind !== 'put';
}

/** The place of the bay under the pointer while a tool looks for one. */
export interface Aim {
  readonly point: Vec3;
  /** unit, out of the surface towards who looks */
  readonly normal: Vec3;
  /** unit, towards who looks; absent = along the normal */
  readonly toEye?: Vec3;
  readonly part: string;
  /** the round rim there, where one was found; `null` = looked for and not found */
  readonly rim?: { readonly centre: Vec3; readonly axis: Vec3; readonly radiusMm: number } | null;
}

/** What the hand has hold of while a button is down. Points are mm in the bay frame. */
export interface Hold {
  readonly run: string;
  /** the hose at a place of its lay, or one of its supports */
  readonly at: { readonly arcLengthMm: number } | { readonly support: string };
  readonly to: Vec3;
  /** for a support that slides along the hose: the hose's direction there; absent = its own stays */
  readonly axis?: Vec3;
  /** whether it stays as a clamp when let go, and not as a waypoint */
  readonly clamp: boolean;
  /** let go, and waiting for the last shape */
  readonly released: boolean;
}

/** Two ports that a run which is being stated joins. */
export interface Joins {
  readonly a: string;
  readonly b: string;
  readonly next: 'a' | 'b';
}

export interface HandState {
  readonly tool: Tool;
  /** id of the chosen support of the chosen run */
  readonly support: string | null;
  /** id of the chosen port */
  readonly port: string | null;
  /** marked along the chosen run's hose, to be locked */
  readonly stretch: Stretch | null;
  /** a locked stretch on its way along the hose; it is the lock's when let go */
  readonly slidLock: { readonly lock: string; readonly to: Stretch } | null;
  /** a new run is being stated on the card */
  readonly stating: boolean;
  /** the ports that it joins as its card has them, END A first, and which of them the next port picked in the bay is for */
  readonly joins: Joins | null;
  readonly aim: Aim | null;
  /** counts how often the middle of the picture was pointed at by a key; 0 = the tool in the hand is led by the pointer */
  readonly middle: number;
  readonly hold: Hold | null;
  /** the hose as the hand has it; kept until the run is laid again */
  readonly shape: HandShape | null;
  /** why the hose does not follow, in a sentence */
  readonly trouble: string | null;
}

const EMPTY_HAND: HandState = {
  tool: NO_TOOL,
  support: null,
  port: null,
  stretch: null,
  slidLock: null,
  stating: false,
  joins: null,
  aim: null,
  middle: 0,
  hold: null,
  shape: null,
  trouble: null,
};

/** What is done by hand at this moment. A store of its own, since a drag changes it many times a second. */
export function createHandStore() {
  const store = createStore<HandState>(() => EMPTY_HAND);
  return {
    ...store,
    set: store.setState,
    /** Nothing chosen, nothing held. */
    empty: (): void => store.setState(EMPTY_HAND),
    take: (tool: Tool): void => store.setState({ tool, aim: null, middle: 0 }),
  };
}

export type HandStore = ReturnType<typeof createHandStore>;
