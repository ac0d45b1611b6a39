import type { Page } from '../layout/page.ts';
import { FINE_MM, GREY, HAIR_MM, INK, OUTLINE_MM, RULE, WHITE } from '../layout/style.ts';
import type { Station } from './stations.ts';

/** How far a mark is drawn beyond hose and sleeve, mm on paper. */
export const STATION_REACH_MM: Record<Station['kind'], number> = { mouth: 0, clamp: 1.2, 'pass-through': 4 };

/** The hose between its collars, on its side: `x` and `y` of shoulder A on the page, its length and width on paper. */
export interface HosePlace {
  readonly x: number;
  readonly y: number;
  readonly lengthMm: number;
  readonly thickMm: number;
  /** with the sleeve, where there is one */
  readonly outsideMm: number;
  readonly perMm: number;
}

/** The hose's outside with a touch of braid, and its centre line. */
export function drawHose(page: Page, { x, y, lengthMm, thickMm }: HosePlace, braided: boolean): void {
  page.rectangle(x, y - thickMm / 2, lengthMm, thickMm, { line: null, fill: WHITE });
  if (braided) drawBraid(page, x, y, lengthMm, thickMm);
  page.line(x, y - thickMm / 2, x + lengthMm, y - thickMm / 2, { widthMm: OUTLINE_MM });
  page.line(x, y + thickMm / 2, x + lengthMm, y + thickMm / 2, { widthMm: OUTLINE_MM });
}

/** Crossed hair lines at 45 degrees, the drawing sign of a braid. */
function drawBraid(page: Page, x: number, y: number, lengthMm: number, thickMm: number): void {
  const top = y - thickMm / 2;
  const bottom = y + thickMm / 2;
  for (let at = x; at + thickMm <= x + lengthMm; at += thickMm / 2) {
    page.line(at, top, at + thickMm, bottom, { widthMm: HAIR_MM, line: RULE });
    page.line(at, bottom, at + thickMm, top, { widthMm: HAIR_MM, line: RULE });
  }
}

/** The sleeve as a dashed outline round hose and collars, since it goes on over them. */
export function drawSleeve(page: Page, { x, y, lengthMm, outsideMm, perMm }: HosePlace, reachMm: number): void {
  page.rectangle(x - reachMm * perMm, y - outsideMm / 2, lengthMm + 2 * reachMm * perMm, outsideMm, {
    line: GREY,
    widthMm: FINE_MM * 1.4,
    dashMm: [1.6, 0.9],
  });
}

/** Clamps as bands across the hose, dashed where only proposed; pass-throughs as a wall cut away round it. */
export function drawStation(page: Page, { x, y, outsideMm, perMm }: HosePlace, station: Station): void {
  if (station.kind === 'mouth') return;
  const at = x + station.fromShoulderAMm * perMm;
  const dash = station.proposed ? { dashMm: [0.8, 0.6] } : {};
  if (station.kind === 'clamp') {
    const tall = outsideMm + 2 * STATION_REACH_MM.clamp;
    page.rectangle(at - 1.3, y - tall / 2, 2.6, tall, { widthMm: OUTLINE_MM, fill: WHITE, ...dash });
    return;
  }
  for (const side of [-1, 1]) {
    const from = y + side * (outsideMm / 2 + 0.3);
    const tall = STATION_REACH_MM['pass-through'] - 0.3;
    page.rectangle(at - 0.6, Math.min(from, from + side * tall), 1.2, tall, { line: INK, widthMm: FINE_MM, fill: INK });
  }
}
