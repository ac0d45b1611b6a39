import type { Bundle, Project } from '../../../shared/document/project/schema.ts';
import { numberedId } from './freshId.ts';

/** The bundle that a run is in; a run is in one at most. */
export function bundleOfRun({ bundles = [] }: Pick<Project, 'bundles'>, runId: string): Bundle | undefined {
  return bundles.find(({ runs }) => runs.includes(runId));
}

/** The project with its bundles; those with fewer than two runs are none. */
function withBundles({ bundles: _old, ...project }: Project, bundles: readonly Bundle[]): Project {
  const kept = bundles.filter(({ runs }) => runs.length > 1);
  return kept.length === 0 ? project : { ...project, bundles: kept };
}

/** Takes a run out of its bundle; one of two takes the bundle apart. The very same project where it is in none. */
export function untieRun(project: Project, runId: string): Project {
  if (bundleOfRun(project, runId) === undefined) return project;
  const bundles = project.bundles ?? [];
  return withBundles(
    project,
    bundles.map((bundle) => ({ ...bundle, runs: bundle.runs.filter((id) => id !== runId) })),
  );
}

/** Ties a run to another: into that one's bundle, else that one into its own, else both into a new one. */
export function tieRuns(project: Project, runId: string, otherId: string): Project {
  const theirs = bundleOfRun(project, otherId);
  if (runId === otherId || theirs?.runs.includes(runId) === true) return project;
  if (theirs !== undefined) return joined(untieRun(project, runId), theirs.id, runId);
  const own = bundleOfRun(project, runId);
  if (own !== undefined) return joined(project, own.id, otherId);
  const id = numberedId('bundle', project.bundles ?? []);
  const made: Bundle = { id, name: `Bundle ${(project.bundles ?? []).length + 1}`, runs: [runId, otherId] };
  return withBundles(project, [...(project.bundles ?? []), made]);
}

function joined(project: Project, bundleId: string, runId: string): Project {
  return changeBundle(project, bundleId, ({ runs, ...bundle }) => ({ ...bundle, runs: [...runs, runId] }));
}

function changeBundle(project: Project, bundleId: string, change: (bundle: Bundle) => Bundle): Project {
  return withBundles(
    project,
    (project.bundles ?? []).map((bundle) => (bundle.id === bundleId ? change(bundle) : bundle)),
  );
}

/** From hose to hose where they are tied, mm; undefined = they touch. */
export function setBundleGap(project: Project, bundleId: string, gapMm: number | undefined): Project {
  return changeBundle(project, bundleId, ({ gapMm: _old, ...bundle }) =>
    gapMm === undefined ? bundle : { ...bundle, gapMm },
  );
}

export function setBundleName(project: Project, bundleId: string, name: string): Project {
  return name.trim() === '' ? project : changeBundle(project, bundleId, (bundle) => ({ ...bundle, name: name.trim() }));
}
