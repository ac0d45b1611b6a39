import { type HandStore, NO_TOOL, type Tool } from './handStore.ts';
import type { JobsStore } from './jobsStore.ts';
import type { SessionStore } from './sessionStore.ts';

interface WithoutPicture {
  readonly hand: HandStore;
  readonly session: SessionStore;
  readonly jobs: JobsStore;
}

/** Tools that need a place in the picture, and what to do without one. Parts are put into skins and on bodies from their lists too. */
const INSTEAD: { readonly [K in Tool['kind']]?: string } = {
  seat: 'Put a port in the middle of the bay, on the card of ports, and type its place and direction.',
  measure: 'Two places are measured between in the picture alone; everything that is stated can be typed.',
  rod: 'The points of a rod are picked in the picture alone; the command line straightens a rod from a table of points.',
  level: 'A level face is picked in the picture alone; a scan can also be levelled before it is brought in.',
};

/** Where there is no picture, a tool that looks for a place in it is put down at once, and it is said what to do instead. */
export function putDownWithoutPicture({ hand, session, jobs }: WithoutPicture): void {
  hand.subscribe(({ tool }) => {
    const instead = session.getState().picture === 'no-webgl' ? INSTEAD[tool.kind] : undefined;
    if (instead === undefined) return;
    hand.take(NO_TOOL);
    jobs.tell('There is no picture to point at', [instead]);
  });
}
