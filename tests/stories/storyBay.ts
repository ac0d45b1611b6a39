import { createHash } from 'node:crypto';
import { UNWATCHED } from '../../shared/base/watch.ts';
import type { Finding, LayReport } from '../../shared/document/lay/schema.ts';
import { partTableCsv } from '../../shared/document/parts/partTableCsv.ts';
import type { Adapter, Clamp, EndRow, Hose, Sleeve } from '../../shared/document/parts/schema.ts';
import type { ProjectFiles } from '../../shared/document/project/projectFiles.ts';
import { type Bay, PROJECT_FORMAT, PROJECT_VERSION, type Project } from '../../shared/document/project/schema.ts';
import { newJobMemory, runJob } from '../../shared/jobs/runJob.ts';

/** A block of the bay, a part by its name. mm, bay frame. */
export interface Block {
  readonly name: string;
  readonly min: readonly [number, number, number];
  readonly max: readonly [number, number, number];
}

/** A whole small job: a bay of blocks, the parts on the shelf, and what the project states beside. All of it is invented. */
export interface Story {
  readonly blocks: readonly Block[];
  readonly hoses: readonly Hose[];
  readonly ends: readonly EndRow[];
  readonly sleeves?: readonly Sleeve[];
  readonly adapters?: readonly Adapter[];
  readonly clamps?: readonly Clamp[];
  readonly bay?: Partial<Omit<Bay, 'meshes'>>;
  readonly project: Pick<Project, 'ports' | 'runs'> & Partial<Project>;
}

/** The story as the files of a project: an OBJ and CSV tables, read by the program as any user's are. */
export function storyFiles({
  blocks,
  hoses,
  ends,
  sleeves = [],
  adapters = [],
  clamps = [],
  ...more
}: Story): ProjectFiles {
  const obj = new TextEncoder().encode(objOfBlocks(blocks));
  const tables = {
    hoses: partTableCsv('hoses', hoses),
    ends: partTableCsv('ends', ends),
    sleeves: partTableCsv('sleeves', sleeves),
    adapters: partTableCsv('adapters', adapters),
    clamps: partTableCsv('clamps', clamps),
  };
  const project: Project = {
    format: PROJECT_FORMAT,
    version: PROJECT_VERSION,
    name: 'Story',
    exampleData: true,
    bay: {
      scanUncertaintyMm: 0,
      skins: [],
      bodies: [],
      ...more.bay,
      meshes: [{ path: 'bay.obj', sha256: createHash('sha256').update(obj).digest('hex'), unit: 'mm', upAxis: '+z' }],
    },
    tables: {
      hoses: ['hoses.csv'],
      ends: ['ends.csv'],
      sleeves: ['sleeves.csv'],
      adapters: ['adapters.csv'],
      clamps: ['clamps.csv'],
    },
    overrides: [],
    seed: 1,
    ...more.project,
  };
  const files = Object.entries(tables).map(([kind, text]) => ({
    path: `${kind}.csv`,
    bytes: new TextEncoder().encode(text),
  }));
  return { projectText: JSON.stringify(project), files: [{ path: 'bay.obj', bytes: obj }, ...files] };
}

/** Reads, lays and checks the story as the program does; bad input fails the test with its sentences. today: `YYYY-MM-DD`. */
export async function layStory(story: Story, today?: string): Promise<LayReport> {
  const input = { ...storyFiles(story), ...(today === undefined ? {} : { today }) };
  const end = await runJob('layRuns', input, UNWATCHED, newJobMemory());
  if (end.kind !== 'done') throw new Error(`the story was not laid: ${JSON.stringify(end)}`);
  return end.output;
}

/** The findings of one check, the gravest first. */
export function findingsOf({ findings }: LayReport, check: string, run?: string): Finding[] {
  const order = { stop: 0, look: 1, note: 2 };
  return findings
    .filter((f) => f.check === check && (run === undefined || f.run === run))
    .sort((p, q) => order[p.severity] - order[q.severity]);
}

/** What a clean job may not have: findings that are more than notes, as text for a readable failure. */
export function aboveNote({ findings }: LayReport): string[] {
  return findings.filter((f) => f.severity !== 'note').map((f) => `${f.severity} ${f.check} ${f.run}: ${f.message}`);
}

const FACES = [
  [0, 1, 3, 2],
  [4, 6, 7, 5],
  [0, 4, 5, 1],
  [2, 3, 7, 6],
  [0, 2, 6, 4],
  [1, 5, 7, 3],
] as const;

/** Faces look outwards or not, as scans do; nothing here depends on it. */
function objOfBlocks(blocks: readonly Block[]): string {
  return blocks
    .map(({ name, min, max }, b) => {
      const corners = Array.from({ length: 8 }, (_, i) =>
        [0, 1, 2].map((k) => ((i >> k) & 1 ? max[k] : min[k])).join(' '),
      );
      const faces = FACES.map((face) => `f ${face.map((corner) => 8 * b + corner + 1).join(' ')}`);
      return [`o ${name}`, ...corners.map((c) => `v ${c}`), ...faces].join('\n');
    })
    .join('\n');
}
