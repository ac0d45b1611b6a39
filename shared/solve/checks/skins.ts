import type { Clearance } from '../../document/lay/schema.ts';
import { PLAIN_SKIN, type Project, type Skin } from '../../document/project/schema.ts';

/** The skin that a clearance is to, as the project has it now; undefined for a run or a skin no longer there. */
export function skinOfClearance(project: Project, clearance: Clearance): Skin | undefined {
  const { kind, id } = clearance.to;
  if (kind !== 'skin') return undefined;
  return project.bay.skins.find((s) => s.id === id) ?? (id === PLAIN_SKIN.id ? PLAIN_SKIN : undefined);
}

/** What a clearance is to, in words: the skin with its part, or the other run. */
export function thingText(project: Project, clearance: Clearance): string {
  const { kind, id, part } = clearance.to;
  if (kind === 'run') return `the hose "${project.runs.find((r) => r.id === id)?.name ?? id}"`;
  const skin = skinOfClearance(project, clearance);
  const name = skin?.name ?? id;
  const thing = part === undefined ? name : `${part} (${name})`;
  return skin?.sweep === undefined ? thing : `the sweep of ${thing}`;
}
