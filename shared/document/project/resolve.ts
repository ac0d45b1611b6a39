import type { Problem } from '../../base/result.ts';
import { rejectFrom, unit, type Vec3 } from '../../base/vec3.ts';
import { outsideDiameterMm } from '../parts/outsideDiameter.ts';
import type { End, Hose, PartTables, Sleeve } from '../parts/schema.ts';
import { shortJson } from '../problems/shortJson.ts';
import type { Port, Project, Run, RunEnd, Support } from './schema.ts';

/** One end of a run with its objects: the port (axis and up unit and square), the end, and its clock where stated. */
export interface ResolvedEnd {
  readonly port: Port;
  readonly end: End;
  /** As `RunEnd.clockDeg`; absent = free, the program chooses. */
  readonly clockDeg?: number;
}

/** One run with everything it names. `run.supports` have unit axes. */
export interface ResolvedRun {
  readonly run: Run;
  readonly hose: Hose;
  readonly sleeve?: Sleeve;
  readonly a: ResolvedEnd;
  readonly b: ResolvedEnd;
}

/** A project whose names are replaced by what they name. `project` is what was read, with its directions made unit. */
export interface ResolvedProject {
  readonly project: Project;
  /** In the project's order. */
  readonly runs: readonly ResolvedRun[];
}

/** A resolved project or all that stands in its way; and in both cases what the user should look at. */
export type ResolvedResult =
  | { readonly ok: true; readonly value: ResolvedProject; readonly warnings: readonly Problem[] }
  | { readonly ok: false; readonly problems: readonly Problem[]; readonly warnings: readonly Problem[] };

/**
 * Replaces ids by parts and ports. Takes a project as `parseProject` gives it (ports named by runs exist) and the
 * user's tables. Problems: a hose, end or sleeve that no table has; an end of another dash size than its hose. Warnings:
 * a port whose dash or seat differs from the end's (an adapter is needed and is not modelled); a sleeve too small.
 */
export function resolveProject(project: Project, tables: PartTables): ResolvedResult {
  const ports = new Map(project.ports.map((p) => [p.id, squarePort(p)]));
  const notes: Notes = { problems: [], warnings: [] };
  const runs = project.runs.flatMap((run, i) => resolveRun(run, `runs[${i}]`, ports, tables, notes));
  if (notes.problems.length > 0) return { ok: false, ...notes };
  const resolved: Project = { ...project, ports: [...ports.values()], runs: runs.map((r) => r.run) };
  return { ok: true, value: { project: resolved, runs }, warnings: notes.warnings };
}

interface Notes {
  readonly problems: Problem[];
  readonly warnings: Problem[];
}

function resolveRun(
  run: Run,
  path: string,
  ports: ReadonlyMap<string, Port>,
  tables: PartTables,
  notes: Notes,
): ResolvedRun[] {
  const hose = find(tables.hoses, run.hose, 'hose', `${path}.hose`, notes);
  const sleeve =
    run.sleeve === undefined ? undefined : find(tables.sleeves, run.sleeve, 'sleeve', `${path}.sleeve`, notes);
  const a = resolveEnd(run.a, `${path}.a`, ports, tables, hose, notes);
  const b = resolveEnd(run.b, `${path}.b`, ports, tables, hose, notes);
  if (hose === undefined || a === undefined || b === undefined) return [];
  if (sleeve !== undefined) warnTightSleeve(hose, sleeve, path, notes);
  const supports = run.supports.map(unitSupport);
  return [{ run: { ...run, supports }, hose, ...(sleeve === undefined ? {} : { sleeve }), a, b }];
}

function resolveEnd(
  runEnd: RunEnd,
  path: string,
  ports: ReadonlyMap<string, Port>,
  tables: PartTables,
  hose: Hose | undefined,
  notes: Notes,
): ResolvedEnd | undefined {
  const port = ports.get(runEnd.port);
  if (port === undefined) notes.problems.push(told(`${path}.port`, 'no port has this id', runEnd.port));
  const end = find(tables.ends, runEnd.end, 'end', `${path}.end`, notes);
  if (port === undefined || end === undefined) return undefined;
  if (hose !== undefined && end.dash !== hose.dash)
    notes.problems.push(
      told(`${path}.end`, `a -${end.dash} end does not go on a -${hose.dash} hose (${hose.id})`, runEnd.end),
    );
  warnAdapter(port, end, path, notes);
  return { port, end, ...(runEnd.clockDeg === undefined ? {} : { clockDeg: runEnd.clockDeg }) };
}

function warnAdapter(port: Port, end: End, path: string, notes: Notes): void {
  if (port.dash !== end.dash)
    notes.warnings.push(
      told(
        `${path}.end`,
        `the end is -${end.dash}, its port -${port.dash}: it needs an adapter, which is not in the lay`,
        end.id,
      ),
    );
  if (port.seat !== end.seat)
    notes.warnings.push(
      told(
        `${path}.end`,
        `the end seats on ${end.seat}, its port is ${port.seat}: it needs an adapter, which is not in the lay`,
        end.id,
      ),
    );
}

function warnTightSleeve(hose: Hose, sleeve: Sleeve, path: string, notes: Notes): void {
  const bare = outsideDiameterMm(hose);
  if (sleeve.insideDiameterMm < bare)
    notes.warnings.push(
      told(
        `${path}.sleeve`,
        `the sleeve is ${sleeve.insideDiameterMm} mm inside, the hose ${bare} mm outside: it does not go over unless it stretches`,
        sleeve.id,
      ),
    );
}

function find<T extends { id: string }>(
  rows: readonly T[],
  id: string,
  kind: string,
  path: string,
  notes: Notes,
): T | undefined {
  const row = rows.find((r) => r.id === id);
  if (row === undefined)
    notes.problems.push(told(path, `no ${kind} has this id in the ${kind} tables${nearest(rows, id)}`, id));
  return row;
}

/** Ids that share their beginning with the one asked for, since a slip is mostly in the tail. */
function nearest(rows: readonly { id: string }[], id: string): string {
  const alike = rows.map((r) => r.id).filter((known) => known.slice(0, 4) === id.slice(0, 4));
  return alike.length === 0 ? '' : `; there are ${alike.slice(0, 5).join(', ')}`;
}

function told(path: string, message: string, value: unknown): Problem {
  const got = shortJson(value);
  return { path, message, ...(got === undefined ? {} : { got }) };
}

/** A port with its axis and its 12 o'clock made unit and square to each other. */
export function squarePort(port: Port): Port {
  const axis = unit(port.axis);
  return { ...port, axis: triple(axis), up: triple(unit(rejectFrom(unit(port.up), axis))) };
}

function unitSupport(support: Support): Support {
  return support.axis === undefined ? support : { ...support, axis: triple(unit(support.axis)) };
}

function triple(v: Vec3): [number, number, number] {
  return [v[0], v[1], v[2]];
}
