import { degreesToRadians } from '../../base/units.ts';
import type { Page, Point } from '../layout/page.ts';
import { FINE_MM, FORBID, GREY, HAIR_MM, INK, OUTLINE_MM, RULE, TYPE, WHITE } from '../layout/style.ts';
import type { ClockFace, FaceHand } from './clockFace.ts';

export interface FaceLook {
  readonly x: number;
  readonly y: number;
  readonly radiusMm: number;
  /** the hose in section, mm on paper */
  readonly hoseRadiusMm: number;
  /** struck out, for what is not to be built */
  readonly wrong: boolean;
}

/** A clock face with both outlets: the near one filled and in front, the far one hollow, dashed and behind the hose. */
export function drawFace(page: Page, face: ClockFace, look: FaceLook): void {
  const { x, y, radiusMm, hoseRadiusMm, wrong } = look;
  drawDial(page, look);
  drawOutlet(page, face.far, look, false);
  page.circle(x, y, hoseRadiusMm, { widthMm: OUTLINE_MM, fill: WHITE });
  drawOutlet(page, face.near, look, true);
  page.circle(x, y, hoseRadiusMm * 0.62, { line: null, fill: INK });
  if (!wrong) return;
  const arm = radiusMm * 1.02;
  for (const side of [-1, 1])
    page.line(x - arm, y - side * arm, x + arm, y + side * arm, { line: FORBID, widthMm: 1, round: true });
}

function at({ x, y }: Pick<FaceLook, 'x' | 'y'>, clockwiseDeg: number, radiusMm: number): Point {
  const angle = degreesToRadians(clockwiseDeg);
  return [x + radiusMm * Math.sin(angle), y - radiusMm * Math.cos(angle)];
}

function drawDial(page: Page, look: FaceLook): void {
  const { x, y, radiusMm, wrong } = look;
  page.circle(x, y, radiusMm, { widthMm: FINE_MM * 1.5, fill: WHITE });
  for (let i = 0; i < 60; i++) {
    const hour = i % 5 === 0;
    const inner = radiusMm - (hour ? 2.2 : 1);
    page.line(...at(look, i * 6, inner), ...at(look, i * 6, radiusMm), {
      widthMm: hour ? FINE_MM * 1.5 : HAIR_MM,
      line: hour ? INK : RULE,
    });
  }
  if (wrong) return;
  for (const hour of [12, 3, 6, 9]) {
    const [tx, ty] = at(look, hour * 30, radiusMm + 2.6);
    page.text(`${hour}`, tx, ty + 1, { sizePt: TYPE.small, colour: GREY, align: 'middle' });
  }
}

/** An outlet as an elbow seen along the hose: a bar from the hose outward with its letter in a ring at the tip. */
function drawOutlet(page: Page, hand: FaceHand, look: FaceLook, near: boolean): void {
  // The far outlet reaches further out, so that it shows even behind the near one.
  const tip = at(look, hand.clockwiseDeg, look.radiusMm * (near ? 0.56 : 0.78));
  const root = at(look, hand.clockwiseDeg, near ? 0 : look.hoseRadiusMm);
  const half = look.hoseRadiusMm * (near ? 0.55 : 0.42);
  const across = at({ x: 0, y: 0 }, hand.clockwiseDeg + 90, half);
  const corners: Point[] = [
    [root[0] + across[0], root[1] + across[1]],
    [tip[0] + across[0], tip[1] + across[1]],
    [tip[0] - across[0], tip[1] - across[1]],
    [root[0] - across[0], root[1] - across[1]],
  ];
  page.path(
    corners,
    near ? { widthMm: OUTLINE_MM, fill: INK } : { widthMm: OUTLINE_MM, fill: WHITE, dashMm: [1.1, 0.7] },
    true,
  );
  const ring = Math.max(2.2, half * 1.5);
  page.circle(...tip, ring, { widthMm: OUTLINE_MM, fill: near ? INK : WHITE });
  page.text(hand.end, tip[0], tip[1] + 1.15, {
    sizePt: TYPE.body,
    bold: true,
    colour: near ? WHITE : INK,
    align: 'middle',
  });
}
