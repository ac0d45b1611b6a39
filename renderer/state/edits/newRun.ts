import type { End, Hose, PartTables } from '../../../shared/document/parts/schema.ts';
import type { Fluid, Port, Project, Purpose, Run } from '../../../shared/document/project/schema.ts';
import { PURPOSE_WORDS } from '../../../shared/document/wording/serviceWords.ts';
import { portSeat } from '../portSeat.ts';
import { freshId } from './freshId.ts';
import { type AskedOfHose, hoseMisfits, seatsOn } from './partFit.ts';

/** A run while it is being stated; `null` = not stated yet, and then it is no run. */
export interface RunDraft {
  readonly name: string;
  readonly purpose: Purpose;
  readonly fluid: Fluid;
  readonly pressureKpa: number | null;
  readonly temperatureC: number | null;
  readonly portA: string;
  readonly portB: string;
  readonly hose: string;
  readonly endA: string;
  readonly endB: string;
}

/** What usually runs in a hose for each purpose; the user says otherwise where it is not so. */
const USUAL_FLUIDS: Readonly<Record<Purpose, Fluid>> = {
  'turbo-oil-feed': 'engine-oil',
  'turbo-oil-drain': 'engine-oil',
  'turbo-water': 'coolant',
  'oil-pressure': 'engine-oil',
  'oil-suction': 'engine-oil',
  'oil-cooler': 'engine-oil',
  'oil-return': 'engine-oil',
  fuel: 'petrol',
  'fuel-fill': 'petrol',
  'fuel-vent': 'petrol',
  coolant: 'coolant',
  'raw-water': 'raw-water',
  'wet-exhaust': 'exhaust-water',
  breather: 'air',
  other: 'other',
};

/** Ports that no hose joins yet: a port takes one. */
export function freePorts(project: Project): readonly Port[] {
  const taken = new Set(project.runs.flatMap((run) => [run.a.port, run.b.port]));
  return project.ports.filter(({ id }) => !taken.has(id));
}

/** Ends that go on a hose, those that seat on the port without an adapter first, straight ones before angled. */
export function endsFor(ends: readonly End[], hose: Hose | undefined, port: Port | undefined): readonly End[] {
  const fits = (end: End): number => (seatsOn(end, port) ? 0 : 1);
  return ends
    .filter((end) => hose === undefined || end.dash === hose.dash)
    .sort((p, q) => fits(p) - fits(q) || p.bendAngleDeg - q.bendAngleDeg);
}

/** Hoses with the fewest reasons against them first; among those, the ones of the first port's size. */
export function hosesFor(hoses: readonly Hose[], asked: AskedOfHose): readonly Hose[] {
  const [first] = asked.ports;
  const reasons = (hose: Hose): number => hoseMisfits(hose, asked).length;
  const offSize = (hose: Hose): number => (first === undefined || hose.dash === first.dash ? 0 : 1);
  return [...hoses].sort((p, q) => reasons(p) - reasons(q) || offSize(p) - offSize(q));
}

/**
 * A run between two ports with what is most likely filled in: a second port of the same size, what the project's runs of
 * the same purpose carry and are made of, else the first of the tables that fits. `null` where there are not two free ports
 * or no hose or end to take.
 */
export function draftRun(
  project: Project,
  tables: PartTables,
  wanted: Partial<Pick<RunDraft, 'portA' | 'portB' | 'purpose' | 'hose'>> = {},
): RunDraft | null {
  const free = freePorts(project).map((port) => portSeat(port, tables.adapters).port);
  const a = free.find(({ id }) => id === wanted.portA) ?? free[0];
  const others = free.filter((port) => port !== a);
  const b = others.find(({ id }) => id === wanted.portB) ?? others.find(({ dash }) => dash === a?.dash) ?? others[0];
  const purpose = wanted.purpose ?? 'other';
  const like = project.runs.find(({ service }) => service.purpose === purpose);
  const fluid = like?.service.fluid ?? USUAL_FLUIDS[purpose];
  const hoses = hosesFor(tables.hoses, { ports: [a, b], ...like?.service, fluid });
  const likely = hoses.find(({ id }) => id === like?.hose);
  const hose =
    hoses.find(({ id }) => id === wanted.hose) ?? (likely !== undefined && likely.dash === a?.dash ? likely : hoses[0]);
  const [endA] = endsFor(tables.ends, hose, a);
  const [endB] = endsFor(tables.ends, hose, b);
  if (a === undefined || b === undefined || hose === undefined || endA === undefined || endB === undefined) return null;
  return {
    name: freshRunName(project, purpose),
    purpose,
    fluid,
    pressureKpa: like?.service.pressureKpa ?? null,
    temperatureC: like?.service.temperatureC ?? null,
    portA: a.id,
    portB: b.id,
    hose: hose.id,
    endA: endA.id,
    endB: endB.id,
  };
}

function freshRunName(project: Project, purpose: Purpose): string {
  const words = purpose === 'other' ? 'Run' : PURPOSE_WORDS[purpose];
  const isTaken = (name: string): boolean => project.runs.some((run) => run.name === name);
  if (purpose !== 'other' && !isTaken(words)) return words;
  let n = purpose === 'other' ? project.runs.length + 1 : 2;
  while (isTaken(`${words} ${n}`)) n++;
  return `${words} ${n}`;
}

/** What is still missing before a draft is a run, each as a sentence. */
export function draftProblems(draft: RunDraft, project: Project, tables: PartTables): readonly string[] {
  const dash = tables.hoses.find(({ id }) => id === draft.hose)?.dash;
  const wrongEnd = [draft.endA, draft.endB].some((id) => tables.ends.find((end) => end.id === id)?.dash !== dash);
  return [
    ...(draft.name.trim() === '' ? ['Give the run a name.'] : []),
    ...(project.runs.some(({ name }) => name === draft.name.trim()) ? ['Another run has this name.'] : []),
    ...(draft.portA === draft.portB ? ['A hose joins two ports: choose another one for END B.'] : []),
    ...(wrongEnd ? ['An end is not of the hose’s size.'] : []),
    ...(draft.pressureKpa === null ? ['State the working pressure.'] : []),
    ...(draft.temperatureC === null ? ['State the temperature of what runs in it.'] : []),
  ];
}

/** The run that a draft states; null while something is missing. */
export function runOf(draft: RunDraft, project: Project, tables: PartTables): Run | null {
  const { purpose, fluid, pressureKpa, temperatureC } = draft;
  if (pressureKpa === null || temperatureC === null || draftProblems(draft, project, tables).length > 0) return null;
  return {
    id: freshId(draft.name, 'run', project.runs),
    name: draft.name.trim(),
    a: { port: draft.portA, end: draft.endA },
    b: { port: draft.portB, end: draft.endB },
    service: { purpose, fluid, pressureKpa, temperatureC },
    hose: draft.hose,
    slack: 0.05,
    supports: [],
  };
}

export function addRun(project: Project, run: Run): Project {
  return { ...project, runs: [...project.runs, run] };
}

/** Takes a run away, and what was said of it alone: rules set by hand, its place in a bundle. Its ports stay. */
export function removeRun({ bundles, ...project }: Project, runId: string): Project {
  const others = (bundles ?? [])
    .map((bundle) => ({ ...bundle, runs: bundle.runs.filter((id) => id !== runId) }))
    .filter((bundle) => bundle.runs.length > 1);
  return {
    ...project,
    runs: project.runs.filter(({ id }) => id !== runId),
    overrides: project.overrides.filter(({ run }) => run !== runId),
    ...(others.length === 0 ? {} : { bundles: others }),
  };
}
