import { fitsPattern } from '../../../shared/document/project/skinOfPart.ts';

/** Something of the bay that parts are put into by name: a skin, a body. */
interface PartGroup {
  readonly id: string;
  readonly parts: readonly string[];
}

/**
 * The groups with a part put into one of them, or into none (`null`). It leaves those it stood in by its name; a pattern with *
 * that took it in is written out as the names of the other parts it takes in. `all`: names of all parts of the bay.
 */
export function withPartIn<G extends PartGroup>(
  groups: readonly G[],
  part: string,
  groupId: string | null,
  all: readonly string[],
): G[] {
  const without = groups.map((group) => leave(group, part, all));
  return groupId === null
    ? without
    : without.map((group) => (group.id === groupId ? { ...group, parts: [...group.parts, part] } : group));
}

function leave<G extends PartGroup>(group: G, part: string, all: readonly string[]): G {
  if (!group.parts.some((pattern) => fitsPattern(pattern, part))) return group;
  const kept = group.parts.flatMap((pattern) => {
    if (!fitsPattern(pattern, part)) return [pattern];
    return pattern === part ? [] : all.filter((name) => name !== part && fitsPattern(pattern, name));
  });
  return { ...group, parts: [...new Set(kept)] };
}
