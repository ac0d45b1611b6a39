import { degreesToRadians } from '../../base/units.ts';
import type { EndLetter } from './clockFace.ts';

/** An outlet seen from the side of the straight hose, as parts of a unit vector square to the hose. */
export interface SideOutlet {
  /** 1 = straight up the paper, -1 = straight down */
  readonly up: number;
  /** 1 = straight at the reader, -1 = straight away */
  readonly toReader: number;
}

/**
 * How both outlets stand in a side view with END A at the left, END B at the right and the outlet of `down` pointing
 * straight down the paper. Looking from A to B the reader's side of the hose is 3 o'clock (right hand of the looker:
 * forward x up = toward the reader). Clock as in `clockFace`, degrees.
 */
export function sideView(clockDeg: number, down: EndLetter): Record<EndLetter, SideOutlet> {
  // Seen from A with A at 6 o'clock, B stands clockDeg counter-clockwise of it; with B at 6, A stands that much clockwise.
  const a = down === 'A' ? 180 : 180 + clockDeg;
  const b = down === 'A' ? 180 - clockDeg : 180;
  return { A: outletAt(a), B: outletAt(b) };
}

function outletAt(clockwiseFromADeg: number): SideOutlet {
  const angle = degreesToRadians(clockwiseFromADeg);
  return { up: Math.cos(angle), toReader: Math.sin(angle) };
}
