import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import { bad, good, type Problem, type Result } from '../base/result.ts';
import { PART_KINDS } from '../document/parts/columns.ts';
import { type PartFile, parsePartTables } from '../document/parts/parsePartTables.ts';
import type { PartTables } from '../document/parts/schema.ts';
import { parseProject } from '../document/project/parseProject.ts';
import { type ResolvedProject, type ResolvedRun, resolveProject } from '../document/project/resolve.ts';
import type { Project } from '../document/project/schema.ts';
import { serialiseProject } from '../document/project/serialiseProject.ts';
import type { ProjectFiles } from './contract.ts';

/** A project read from its files, with everything it names looked up. */
export interface ReadProject {
  readonly resolved: ResolvedProject;
  readonly tables: PartTables;
  readonly warnings: readonly Problem[];
  /** sha-256 of what the answers depend on: the project as it reads, its tables and its meshes. */
  readonly inputHash: string;
  /** the same for each run by itself: the bay, and the run with its ports, parts and rules */
  readonly runHashes: Readonly<Record<string, string>>;
  /** the day, as the host said it */
  readonly today?: string;
  readonly meshes: readonly { readonly path: string; readonly bytes: Uint8Array; readonly sha256: string }[];
}

/** Reads and validates a project with its tables and hashes its meshes; every problem at once. Meshes are not opened here. */
export function readProject(input: ProjectFiles): Result<ReadProject> {
  const parsed = parseProject(input.projectText);
  if (!parsed.ok) return parsed;
  const project = parsed.value;
  const files = new Map(input.files.map((f) => [f.path, f.bytes]));
  const missing = namedFiles(project).filter(({ path }) => !files.has(path));
  if (missing.length > 0)
    return bad(missing.map(({ where, path }) => ({ path: where, message: `the file ${path} is not there` })));
  const tables = tableFiles(project, files);
  const parts = parsePartTables(tables);
  if (!parts.ok) return parts;
  const resolved = resolveProject(project, parts.value);
  if (!resolved.ok) return bad(resolved.problems);
  const meshes = project.bay.meshes.map(({ path }) => {
    const bytes = files.get(path) as Uint8Array;
    return { path, bytes, sha256: bytesToHex(sha256(bytes)) };
  });
  return good({
    resolved: resolved.value,
    tables: parts.value,
    warnings: [...resolved.warnings, ...changedMeshes(project, meshes)],
    runHashes: runHashesOf(resolved.value, meshes),
    inputHash: hashOf([serialiseProject(project), ...tables.map((t) => t.text), ...meshes.map((m) => m.sha256)]),
    meshes,
    ...(input.today === undefined ? {} : { today: input.today }),
  });
}

function namedFiles(project: Project): { where: string; path: string }[] {
  return [
    ...project.bay.meshes.map((m, i) => ({ where: `bay.meshes[${i}].path`, path: m.path })),
    ...PART_KINDS.flatMap((kind) =>
      (project.tables[kind] ?? []).map((path, i) => ({ where: `tables.${kind}[${i}]`, path })),
    ),
  ];
}

function tableFiles(project: Project, files: ReadonlyMap<string, Uint8Array>): PartFile[] {
  const decoder = new TextDecoder();
  return PART_KINDS.flatMap((kind) =>
    (project.tables[kind] ?? []).map((path) => ({ path, kind, text: decoder.decode(files.get(path)) })),
  );
}

/** A mesh that is not the one the ports were placed on is used, but said. */
function changedMeshes(project: Project, meshes: ReadProject['meshes']): Problem[] {
  return project.bay.meshes.flatMap((mesh, i) => {
    const found = meshes[i]?.sha256;
    if (found === mesh.sha256) return [];
    return [
      {
        path: `bay.meshes[${i}].sha256`,
        message: `${mesh.path} has changed since the ports were placed on it: look at every port again`,
        got: JSON.stringify(found),
      },
    ];
  });
}

/** A change of one run leaves the hashes of the others; a change of bay or mesh is a change for all. */
export function runHashesOf({ project, runs }: ResolvedProject, meshes: ReadProject['meshes']): Record<string, string> {
  const { vehicle } = project;
  const clockTolerance = project.paperwork?.clockTolerance;
  const bay = JSON.stringify([
    project.bay,
    project.seed,
    meshes.map((m) => m.sha256),
    ...(clockTolerance === undefined ? [] : [clockTolerance]),
    ...(vehicle === undefined ? [] : [vehicle]),
  ]);
  return Object.fromEntries(
    runs.map((resolved) => {
      const { id } = resolved.run;
      const rules = project.overrides.filter((o) => o.run === undefined || o.run === id);
      const mates = (project.bundles ?? []).filter((b) => b.runs.includes(id));
      return [id, hashOf([bay, JSON.stringify([nameless(resolved), rules, ...mates])])];
    }),
  );
}

/** What the shop calls a clamp and when a hose was made move no hose, and what it measured of one that is made does not move its plan. */
function nameless({ run: { asBuilt: _built, madeOn: _made, ...run }, roll: _roll, ...rest }: ResolvedRun): ResolvedRun {
  return { ...rest, run: { ...run, supports: run.supports.map(({ name: _name, ...support }) => support) } };
}

function hashOf(texts: readonly string[]): string {
  const hash = sha256.create();
  const encoder = new TextEncoder();
  for (const text of texts) hash.update(encoder.encode(`${text.length}:${text}`));
  return bytesToHex(hash.digest());
}

/** A problem for each name that is no run of the project, with the runs there are. */
export function unknownRuns(wanted: readonly string[], read: ReadProject): Problem[] {
  const known = read.resolved.runs.map((r) => r.run.id);
  return wanted
    .filter((id) => !known.includes(id))
    .map((id) => ({
      path: 'run',
      message: `no run is called this; there are ${known.join(', ')}`,
      got: JSON.stringify(id),
    }));
}
