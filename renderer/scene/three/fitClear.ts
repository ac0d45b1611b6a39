import { type PerspectiveCamera, Vector3 } from 'three';
import { type FittedView, fitView, frameOf, type ViewMargins, type ViewSubject } from './fitView.ts';

/** A part of the picture that something lies over: shares of the picture from its left and its upper edge, 0 to 1. */
export interface Cover {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Share of the picture between what is seen and what lies over it. */
const GAP = 0.02;
/** A picture narrower than this share of its place is no picture. */
const LEAST_FREE = 0.2;
/** A margin is drawn back towards what it would be without covers by these shares, the most first. */
const DRAWN_BACK = [0.75, 0.5, 0.25];
/** In a place so low that all would be seen from further off than this, times as far, it is better seen than clear. */
const FURTHEST_OFF = 2.2;
/** A picture smaller than another by no more than this share is as good. */
const AS_LARGE = 0.02;

interface Fit {
  readonly margins: ViewMargins;
  readonly view: FittedView;
}

/**
 * Where to stand, as `fitView` has it, so that nothing of the subject is under a cover either. Each cover is left out from
 * above or below, or from its side: of all ways to do so the one with the largest picture is taken, the first of those as
 * large, and its margins are then drawn back as far as everything stays clear. Where there is no way, or only one that makes
 * it small, it stands as `fitView` has it.
 */
export function fitClear(
  camera: PerspectiveCamera,
  subject: ViewSubject,
  margins: ViewMargins,
  covers: readonly Cover[],
): FittedView {
  const fitted = (tried: ViewMargins): Fit => ({ margins: tried, view: fitView(camera, subject, tried) });
  const isClear = ({ view }: Fit): boolean => covers.every((cover) => !isUnder(camera, subject, view, cover));
  const plain = fitted(margins);
  if (isClear(plain)) return plain.view;
  const ways = waysClear(margins, covers).map(fitted).filter(isClear);
  const nearest = Math.min(...ways.map(({ view }) => awayOf(view)));
  if (nearest > FURTHEST_OFF * awayOf(plain.view)) return plain.view;
  const isAsLarge = ({ view }: Fit): boolean => awayOf(view) <= nearest * (1 + AS_LARGE);
  let kept = ways.find(isAsLarge);
  if (kept === undefined) return plain.view;
  for (const edge of ['left', 'right', 'top', 'bottom'] as const)
    for (const back of DRAWN_BACK) {
      const [whole, least]: [number, number] = [kept.margins[edge], margins[edge]];
      if (whole === least) break;
      const tried = fitted({ ...kept.margins, [edge]: whole + (least - whole) * back });
      if (!isClear(tried) || !isAsLarge(tried)) continue;
      kept = tried;
      break;
    }
  return kept.view;
}

/** Margins that leave out all covers, each from above or below or from its side; from above or below first. */
function waysClear(margins: ViewMargins, covers: readonly Cover[]): ViewMargins[] {
  let ways = [margins];
  for (const { left, right, top, bottom } of covers) {
    const along =
      top + bottom < 1 ? ({ edge: 'top', to: bottom } as const) : ({ edge: 'bottom', to: 1 - top } as const);
    const across =
      left + right < 1 ? ({ edge: 'left', to: right } as const) : ({ edge: 'right', to: 1 - left } as const);
    ways = [along, across].flatMap(({ edge, to }) =>
      ways.map((way): ViewMargins => ({ ...way, [edge]: Math.max(way[edge], to + GAP) })),
    );
  }
  return ways.filter((m) => 1 - m.left - m.right > LEAST_FREE && 1 - m.top - m.bottom > LEAST_FREE);
}

function awayOf({ eye, target }: FittedView): number {
  return eye.distanceTo(target);
}

/** Whether anything of the subject is seen where the cover lies. */
function isUnder(camera: PerspectiveCamera, { points, look }: ViewSubject, view: FittedView, cover: Cover): boolean {
  const { tall, wide, right, up } = frameOf(camera, look);
  const away = awayOf(view);
  const place = new Vector3();
  for (let at = 0; at < points.length; at += 3) {
    place.fromArray(points, at).sub(view.target);
    const depth = away - place.dot(look);
    if (depth <= 0) continue;
    const x = (1 + place.dot(right) / (depth * wide)) / 2;
    const y = (1 - place.dot(up) / (depth * tall)) / 2;
    if (x > cover.left && x < cover.right && y > cover.top && y < cover.bottom) return true;
  }
  return false;
}
