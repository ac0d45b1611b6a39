import { createStore } from 'zustand/vanilla';
import type { LengthUnit } from '../../shared/base/units.ts';
import type { DesktopApi, OpenedProject } from '../../shared/desktop/contract.ts';
import { PART_KINDS } from '../../shared/document/parts/columns.ts';
import { partTableCsv } from '../../shared/document/parts/partTableCsv.ts';
import { newProject } from '../../shared/document/project/newProject.ts';
import { parseProject } from '../../shared/document/project/parseProject.ts';
import { BayMesh, type Project } from '../../shared/document/project/schema.ts';
import { serialiseProject } from '../../shared/document/project/serialiseProject.ts';
import type { MeshLook, NamedFile } from '../../shared/jobs/contract.ts';
import type { JobsStore } from './jobsStore.ts';
import { SAFE_WORDS } from './safeWords.ts';

export type { MeshLook };
/** Which axis of a file may point up. */
export const UP_AXES = BayMesh.shape.upAxis.options;

/** What has to be said about a scan before it is a bay, in the order it is asked. */
export const BAY_QUESTIONS = ['unit', 'up', 'uncertainty', 'parts'] as const;
export type BayQuestion = (typeof BAY_QUESTIONS)[number];

export interface NewBayState {
  /** the scan that is being asked about; `null` = none */
  readonly look: MeshLook | null;
  readonly question: BayQuestion;
  readonly name: string;
  readonly unit: LengthUnit;
  readonly upAxis: BayMesh['upAxis'];
  readonly scanUncertaintyMm: number;
  /** what the drawer of parts begins with */
  readonly parts: 'example' | 'empty';
}

/** mm. A handheld scanner with targets, the usual way to scan a bay. */
const USUAL_UNCERTAINTY_MM = 1;

const NONE: NewBayState = {
  look: null,
  question: 'unit',
  name: '',
  unit: 'mm',
  upAxis: '+z',
  scanUncertaintyMm: USUAL_UNCERTAINTY_MM,
  parts: 'example',
};

interface NewBayNeeds {
  readonly jobs: JobsStore;
  readonly desktop: DesktopApi;
  /** puts a project that stands on no disk yet on the bench */
  readonly take: (project: OpenedProject) => Promise<void>;
}

/** From the files of a scan to a bay on the bench, by a few questions. Nothing is written until the project is saved. */
export function createOnNewBay({ jobs, desktop, take }: NewBayNeeds) {
  const store = createStore<NewBayState>(() => NONE);
  let files: readonly NamedFile[] = [];

  /** Looks at files that were chosen or dropped; what they are is told by their content. */
  const begin = async (given: readonly NamedFile[]): Promise<void> => {
    const look = await jobs.work('Reading the scan', 'lookAtMeshes', { files: given });
    if (look === null) return;
    files = given;
    const [first] = given;
    store.setState({
      ...NONE,
      look,
      unit: look.unit,
      upAxis: /\.(glb|gltf)$/i.test(first?.path ?? '') ? '+y' : '+z',
      name: (first?.path ?? 'bay').replace(/\.[^.]*$/, ''),
    });
    if (look.warnings.length > 0)
      jobs.tellProblems('The scan was read, with this to know', look.warnings, SAFE_WORDS.wellRead);
  };

  const step = (by: number): void =>
    store.setState(({ question }) => ({
      question: BAY_QUESTIONS[BAY_QUESTIONS.indexOf(question) + by] ?? question,
    }));

  const finish = async (): Promise<void> => {
    const state = store.getState();
    if (state.look === null) return;
    const shelf = state.parts === 'example' ? await exampleParts(desktop) : emptyParts();
    if (shelf === null)
      return jobs.tell('The example parts are not beside the program', ['Begin with an empty drawer.']);
    const project = newProject({
      name: state.name.trim() || 'New bay',
      meshes: state.look.meshes,
      unit: state.unit,
      upAxis: state.upAxis,
      scanUncertaintyMm: state.scanUncertaintyMm,
      tables: shelf.tables,
    });
    const all = [...files, ...shelf.files];
    clear();
    await take({ label: project.name, savesInPlace: false, projectText: serialiseProject(project), files: all });
  };

  const clear = (): void => {
    files = [];
    store.setState(NONE);
  };

  return {
    ...store,
    set: (to: Partial<Omit<NewBayState, 'look' | 'question'>>): void => store.setState(to),
    begin,
    choose: async (): Promise<void> => {
      const chosen = await desktop.chooseFiles();
      if (chosen === null) return;
      if (!chosen.ok) return jobs.tellProblems('The scan could not be read', chosen.problems, SAFE_WORDS.notRead);
      await begin(chosen.value);
    },
    next: (): void => step(1),
    back: (): void => step(-1),
    finish,
    clear,
  };
}

export type OnNewBay = ReturnType<typeof createOnNewBay>;

interface Shelf {
  readonly tables: Project['tables'];
  readonly files: readonly NamedFile[];
}

/** The tables of the example bay: invented parts, marked so row by row, to try things with. */
async function exampleParts(desktop: DesktopApi): Promise<Shelf | null> {
  const demo = await desktop.exampleParts();
  if (!demo.ok) return null;
  const project = parseProject(demo.value.projectText);
  if (!project.ok) return null;
  const { tables } = project.value;
  const paths = new Set(PART_KINDS.flatMap((kind) => tables[kind] ?? []));
  return { tables, files: demo.value.files.filter(({ path }) => paths.has(path)) };
}

/** Tables with their headings and no rows. */
function emptyParts(): Shelf {
  const files = PART_KINDS.map((kind) => ({
    path: `parts/${kind}.csv`,
    bytes: new TextEncoder().encode(partTableCsv(kind, [])),
  }));
  const tables = Object.fromEntries(PART_KINDS.map((kind) => [kind, [`parts/${kind}.csv`]]));
  return { tables: tables as unknown as Project['tables'], files };
}
