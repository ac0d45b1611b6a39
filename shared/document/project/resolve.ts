import type { Problem } from '../../base/result.ts';
import { rejectFrom, unit, type Vec3 } from '../../base/vec3.ts';
import { outsideDiameterMm } from '../parts/outsideDiameter.ts';
import type { Clamp, End, Hose, PartTables, Roll, Sleeve } from '../parts/schema.ts';
import { shortJson } from '../problems/shortJson.ts';
import { adapterProblems, adapterWarnings, clockProblems, endWarnings, outletOf } from './adapterFit.ts';
import { type FittedAdapter, fitAdapters, type StackedAdapter } from './fitAdapters.ts';
import type { Port, Project, Run, RunEnd, Support } from './schema.ts';

/** One end of a run with its objects: the port (axis and up unit and square), the end, and its clock where stated. */
export interface ResolvedEnd {
  /** As the hose end meets it: on top of its adapters, where it has any. */
  readonly port: Port;
  /** Absent = the end goes straight on the port. */
  readonly stack?: PortStack;
  readonly end: End;
  /** As `RunEnd.clockDeg`; absent = free, the program chooses. */
  readonly clockDeg?: number;
}

/** A port with adapters on it. */
export interface PortStack {
  readonly bare: Port;
  readonly adapters: readonly StackedAdapter[];
  /** How they stand, taper threads at the middle of their ranges. */
  readonly fitted: readonly FittedAdapter[];
}

/** One run with everything it names. `run.supports` have unit axes. */
export interface ResolvedRun {
  readonly run: Run;
  readonly hose: Hose;
  readonly sleeve?: Sleeve;
  /** what its clamps are, where the project names their part */
  readonly clamps?: readonly { readonly support: string; readonly clamp: Clamp }[];
  readonly a: ResolvedEnd;
  readonly b: ResolvedEnd;
  /** what the hose was cut from, where the bench wrote it down */
  readonly roll?: Roll;
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
 * user's tables. Problems: a hose, end, sleeve or adapter that no table has; an end of another dash size than its hose; an
 * outlet or a clock that an adapter or an end cannot have. Warnings: port, adapters and end that do not seat on each other,
 * with an adapter of the tables that would; clocks that are not stated and have to be; a sleeve too small.
 */
export function resolveProject(project: Project, tables: PartTables): ResolvedResult {
  const notes: Notes = { problems: [], warnings: [] };
  const ports = new Map(
    project.ports.map((p, i) => [p.id, withAdapters(squarePort(p), `ports[${i}].adapters`, tables, notes)]),
  );
  const runs = project.runs.flatMap((run, i) => resolveRun(run, `runs[${i}]`, ports, tables, notes));
  if (notes.problems.length > 0) return { ok: false, ...notes };
  const square = [...ports.values()].map(({ port, stack }) => stack?.bare ?? port);
  const resolved: Project = { ...project, ports: square, runs: runs.map((r) => r.run) };
  return { ok: true, value: { project: resolved, runs }, warnings: notes.warnings };
}

interface Notes {
  readonly problems: Problem[];
  readonly warnings: Problem[];
}

type Seated = Pick<ResolvedEnd, 'port' | 'stack'>;

function withAdapters(port: Port, path: string, tables: PartTables, notes: Notes): Seated {
  const adapters = (port.adapters ?? []).flatMap((use, i): StackedAdapter[] => {
    const adapter = find(tables.adapters, use.adapter, 'adapter', `${path}[${i}].adapter`, notes);
    return adapter === undefined ? [] : [{ adapter, use }];
  });
  if (adapters.length < (port.adapters ?? []).length) return { port };
  notes.problems.push(...adapterProblems(adapters, path));
  notes.warnings.push(...adapterWarnings(port, adapters, path));
  return seatedPort(port, adapters);
}

/**
 * The seat that adapters on a port offer, as a port: the port's id, name and body with the place, axis, 12 o'clock, thread
 * and size of the last outlet. bare: square (`squarePort`). clocksDeg: by place in the stack, instead of the stated ones.
 */
export function seatedPort(
  bare: Port,
  adapters: readonly StackedAdapter[],
  clocksDeg?: readonly (number | undefined)[],
): Seated {
  const last = adapters.at(-1);
  if (last === undefined) return { port: bare };
  const fitted = fitAdapters(bare, adapters, clocksDeg);
  const { seatPoint, axis, up } = (fitted.at(-1) as FittedAdapter).to;
  const { adapters: _, ...own } = bare;
  const frame = { seatPoint: triple(seatPoint), axis: triple(axis), up: triple(up) };
  return { port: { ...own, ...frame, ...outletOf(last) }, stack: { bare, adapters, fitted } };
}

function resolveRun(
  run: Run,
  path: string,
  ports: ReadonlyMap<string, Seated>,
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
  const clamps = clampsOf(run, path, tables, notes);
  const roll = rollOf(run, path, tables, notes);
  return [
    {
      run: { ...run, supports },
      hose,
      ...(sleeve === undefined ? {} : { sleeve }),
      ...(clamps.length === 0 ? {} : { clamps }),
      a,
      b,
      ...(roll === undefined ? {} : { roll }),
    },
  ];
}

/** The roll that the hose was cut from; one that no table has any more, or of another hose, is said. */
function rollOf({ asBuilt, hose }: Run, path: string, tables: PartTables, notes: Notes): Roll | undefined {
  const wanted = asBuilt?.roll;
  if (wanted === undefined) return undefined;
  const roll = tables.rolls.find(({ id }) => id === wanted);
  if (roll?.hose === hose) return roll;
  const message = roll === undefined ? 'no roll has this id in the roll tables' : `this roll is of ${roll.hose}`;
  notes.warnings.push(told(`${path}.asBuilt.roll`, message, wanted));
  return undefined;
}

/** The clamps that the run's supports name; one that no table has holds all the same, and is said. */
function clampsOf(run: Run, path: string, tables: PartTables, notes: Notes): { support: string; clamp: Clamp }[] {
  return run.supports.flatMap(({ id, part }, i) => {
    if (part === undefined) return [];
    const clamp = tables.clamps.find((row) => row.id === part);
    if (clamp !== undefined) return [{ support: id, clamp }];
    notes.warnings.push(told(`${path}.supports[${i}].part`, 'no clamp has this id in the clamp tables', part));
    return [];
  });
}

function resolveEnd(
  runEnd: RunEnd,
  path: string,
  ports: ReadonlyMap<string, Seated>,
  tables: PartTables,
  hose: Hose | undefined,
  notes: Notes,
): ResolvedEnd | undefined {
  const seated = ports.get(runEnd.port);
  if (seated === undefined) notes.problems.push(told(`${path}.port`, 'no port has this id', runEnd.port));
  const end = find(tables.ends, runEnd.end, 'end', `${path}.end`, notes);
  if (seated === undefined || end === undefined) return undefined;
  if (hose !== undefined && end.dash !== hose.dash)
    notes.problems.push(
      told(`${path}.end`, `a -${end.dash} end does not go on a -${hose.dash} hose (${hose.id})`, runEnd.end),
    );
  notes.problems.push(...clockProblems(end, runEnd.clockDeg, `${path}.clockDeg`));
  notes.warnings.push(...endWarnings(seated.port, end, runEnd, tables, path));
  if (runEnd.hoseClamps !== undefined && end.joint !== 'clamped')
    notes.warnings.push(
      told(`${path}.hoseClamps`, `no hose clamps hold this end, its joint is ${end.joint}`, runEnd.hoseClamps),
    );
  return { ...seated, end, ...(runEnd.clockDeg === undefined ? {} : { clockDeg: runEnd.clockDeg }) };
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
