import { length } from '../../../shared/base/vec3.ts';
import { CHASSIS_BODY, type Project, type Run, type Support } from '../../../shared/document/project/schema.ts';
import { withRun } from './withRun.ts';

export type SupportKind = Support['kind'];

/** Puts a support before the one that has the number `at` now; at the end beyond the last. */
export function putSupport(project: Project, runId: string, at: number, support: Support): Project {
  return withRun(project, runId, (run) => ({
    ...run,
    supports: [...run.supports.slice(0, at), support, ...run.supports.slice(at)],
  }));
}

/**
 * Changes one support. A clamp or pass-through keeps an axis: without one it stays what it was. An empty name, the
 * chassis as body, no firewall or a hole of 0 is none stated.
 */
export function changeSupport(
  project: Project,
  runId: string,
  supportId: string,
  change: Partial<
    Pick<Support, 'kind' | 'point' | 'axis' | 'name' | 'body' | 'part' | 'seal' | 'inFirewall' | 'holeMm'>
  >,
): Project {
  return withRun(project, runId, (run) =>
    planesKept({
      ...run,
      supports: run.supports.map((support) => (support.id === supportId ? changed(support, change) : support)),
    }),
  );
}

function changed(support: Support, change: Partial<Support>): Support {
  const { name, body, part, seal, inFirewall, holeMm, ...next } = { ...support, ...change };
  if (next.kind !== 'waypoint' && (next.axis === undefined || length(next.axis) === 0)) return support;
  return {
    ...next,
    ...(name === undefined || name.trim() === '' ? {} : { name: name.trim() }),
    ...(body === undefined || body === CHASSIS_BODY.id ? {} : { body }),
    ...(part === undefined || part === '' || next.kind !== 'clamp' ? {} : { part }),
    ...(seal === undefined || next.kind !== 'pass-through' ? {} : { seal }),
    ...(inFirewall === true && next.kind === 'pass-through' ? { inFirewall } : {}),
    ...(holeMm === undefined || holeMm === 0 || next.kind !== 'pass-through' ? {} : { holeMm }),
  };
}

export function removeSupport(project: Project, runId: string, supportId: string): Project {
  return withRun(project, runId, (run) =>
    planesKept({ ...run, supports: run.supports.filter(({ id }) => id !== supportId) }),
  );
}

/** A run without the stretches in one plane that began at what no longer holds it. */
function planesKept({ onePlane, ...run }: Run): Run {
  const holds = (id: string): boolean => run.supports.some((s) => s.id === id && s.kind !== 'waypoint');
  const kept = (onePlane ?? []).filter((from) => from === 'a' || holds(from));
  return kept.length === 0 ? run : { ...run, onePlane: kept };
}

/** Moves a support one place nearer to END A (-1) or to END B (1) in the order the hose meets them. */
export function reorderSupport(project: Project, runId: string, supportId: string, by: 1 | -1): Project {
  return withRun(project, runId, (run) => {
    const at = run.supports.findIndex(({ id }) => id === supportId);
    const to = at + by;
    const [here, there] = [run.supports[at], run.supports[to]];
    if (here === undefined || there === undefined) return run;
    return { ...run, supports: run.supports.map((s, i) => (i === at ? there : i === to ? here : s)) };
  });
}

/** Name of a support as it is shown: its own, or its kind with its number on the run. */
export function supportName(supports: readonly Support[], support: Support, kindWords: string): string {
  if (support.name !== undefined) return support.name;
  return `${kindWords} ${supports.filter(({ kind }) => kind === support.kind).indexOf(support) + 1}`;
}
