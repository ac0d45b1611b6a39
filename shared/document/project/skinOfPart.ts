import { type Bay, type Body, CHASSIS_BODY, PLAIN_SKIN, type Skin } from './schema.ts';

/** The part of a project that says what its bay's parts are. */
export interface BayOwner {
  readonly bay: Pick<Bay, 'skins' | 'bodies' | 'leftOut'>;
}

/** The skin of a bay part: the first in the project's list with a name pattern that fits it, else plain. */
export function skinOfPart(project: BayOwner, partName: string): Skin {
  return firstWithPart(project.bay.skins, partName) ?? PLAIN_SKIN;
}

/** The body of a bay part: the first in the project's list with a name pattern that fits it, else the chassis. */
export function bodyOfPart(project: BayOwner, partName: string): Body {
  return firstWithPart(project.bay.bodies, partName) ?? CHASSIS_BODY;
}

/** Whether the project leaves a bay part out: it is neither drawn nor kept clear of. */
export function isLeftOut(project: BayOwner, partName: string): boolean {
  return (project.bay.leftOut ?? []).some((pattern) => fitsPattern(pattern, partName));
}

/** Whether a name fits a pattern: `*` stands for any letters, none included; all else, case too, stands for itself. */
export function fitsPattern(pattern: string, name: string): boolean {
  const pieces = pattern.split('*');
  const first = pieces[0] ?? '';
  if (pieces.length === 1) return name === pattern;
  const last = pieces.at(-1) ?? '';
  if (name.length < first.length + last.length || !name.startsWith(first) || !name.endsWith(last)) return false;
  const end = name.length - last.length;
  let at = first.length;
  for (const piece of pieces.slice(1, -1)) {
    const found = name.indexOf(piece, at);
    if (found < 0 || found + piece.length > end) return false;
    at = found + piece.length;
  }
  return true;
}

function firstWithPart<T extends { parts: readonly string[] }>(groups: readonly T[], name: string): T | undefined {
  return groups.find((group) => group.parts.some((pattern) => fitsPattern(pattern, name)));
}
