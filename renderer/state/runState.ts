import type { Finding, Lay } from '../../shared/document/lay/schema.ts';
import type { PartTables } from '../../shared/document/parts/schema.ts';
import type { Port, Project, Run } from '../../shared/document/project/schema.ts';
import type { OpenDocument } from './documentStore.ts';

/** What a builder may do with a run as it stands. */
export type RunState = 'not-laid' | 'stale' | 'stop' | 'look' | 'clean';

/** What the list of runs shows: while laying goes on, a run whose hose is found stands so, whatever it was before. */
export type ShownRunState = RunState | 'found';

/** The words said for each state: on the list, to a screen reader, and beside the hose. */
export const RUN_STATE_WORDS: Record<ShownRunState, string> = {
  'not-laid': 'not laid',
  found: 'found, not settled',
  stale: 'changed, lay again',
  stop: 'do not cut',
  look: 'look',
  clean: 'laid clean',
};

/** Everything in the project and its parts that a run's lay depends on, as one text. Names and notes of a run do not move a hose. */
function layInputs({ shelf }: OpenDocument, project: Project, runId: string): string {
  const run = project.runs.find((r) => r.id === runId);
  if (run === undefined) return '';
  const { name: _name, asBuilt: _built, ...named } = run;
  const laid = { ...named, supports: run.supports.map(({ name: _own, ...support }) => support) };
  const ports = project.ports.filter((port) => port.id === run.a.port || port.id === run.b.port);
  const overrides = project.overrides.filter((o) => o.run === undefined || o.run === runId);
  const mates = (project.bundles ?? []).filter((bundle) => bundle.runs.includes(runId));
  const parts = usedParts(shelf.tablesOf(project), run, ports);
  return JSON.stringify([
    laid,
    ports,
    project.bay,
    parts,
    overrides,
    mates,
    project.seed,
    project.paperwork?.clockTolerance,
    project.vehicle,
  ]);
}

/** The rows of the part tables that a run is made of, with the adapters on its ports. */
function usedParts(
  { hoses, ends, sleeves, adapters, clamps }: PartTables,
  run: Run,
  ports: readonly Port[],
): unknown[] {
  const screwed = new Set(ports.flatMap((port) => (port.adapters ?? []).map((use) => use.adapter)));
  const holding = new Set(run.supports.map(({ part }) => part));
  return [
    hoses.find(({ id }) => id === run.hose),
    ends.find(({ id }) => id === run.a.end),
    ends.find(({ id }) => id === run.b.end),
    sleeves.find(({ id }) => id === run.sleeve),
    ...adapters.filter(({ id }) => screwed.has(id)),
    ...clamps.filter(({ id }) => holding.has(id)),
  ];
}

/** Whether the run's lay was worked out from something else than what the project says now. */
export function isStale(open: OpenDocument, runId: string): boolean {
  const from = open.laidFrom[runId];
  if (from === undefined || from === open.history.present) return false;
  return layInputs(open, from, runId) !== layInputs(open, open.history.present, runId);
}

export function layOf(open: OpenDocument, runId: string): Lay | undefined {
  return open.report?.lays.find((lay) => lay.run === runId);
}

export function findingsOf(open: OpenDocument, runId: string): readonly Finding[] {
  return open.report?.findings.filter((finding) => finding.run === runId) ?? [];
}

export function runState(open: OpenDocument, runId: string): RunState {
  const lay = layOf(open, runId);
  if (lay === undefined) return 'not-laid';
  if (isStale(open, runId)) return 'stale';
  const severities = findingsOf(open, runId).map((finding) => finding.severity);
  if (lay.outcome !== 'laid' || severities.includes('stop')) return 'stop';
  return severities.includes('look') ? 'look' : 'clean';
}
