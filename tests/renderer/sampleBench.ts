import { createBench } from '../../renderer/state/bench.ts';
import type { DesktopApi, OpenedProject } from '../../shared/desktop/contract.ts';
import type { Finding, Lay, LayReport } from '../../shared/document/lay/schema.ts';
import { columnsOf } from '../../shared/document/parts/columns.ts';
import { Project } from '../../shared/document/project/schema.ts';
import type { JobEnd, JobInput, JobName } from '../../shared/jobs/contract.ts';

/** A project of two runs, as text and table files, small enough to read. */
export const SAMPLE_PROJECT: Project = Project.parse({
  format: 'hosewright-project',
  version: 1,
  name: 'Sample',
  bay: {
    meshes: [{ path: 'bay.stl', sha256: '0'.repeat(64), unit: 'mm', upAxis: '+z' }],
    scanUncertaintyMm: 1,
    skins: [],
    bodies: [],
  },
  tables: { hoses: ['hoses.csv'], ends: ['ends.csv'] },
  ports: ['p1', 'p2', 'p3', 'p4'].map((id, i) => ({
    id,
    name: `Port ${i + 1}`,
    seatPoint: [i * 100, 0, 0],
    axis: [0, 0, 1],
    up: [1, 0, 0],
    seat: 'flare-37',
    dash: 8,
  })),
  runs: [
    { id: 'feed', name: 'Feed', a: { port: 'p1', end: 'straight' }, b: { port: 'p2', end: 'elbow' } },
    { id: 'drain', name: 'Drain', a: { port: 'p3', end: 'straight' }, b: { port: 'p4', end: 'straight' } },
  ].map((run) => ({
    ...run,
    hose: 'braided',
    service: { purpose: 'turbo-oil-feed', fluid: 'engine-oil', pressureKpa: 400, temperatureC: 110 },
  })),
});

function csv(kind: 'hoses' | 'ends', rows: readonly Record<string, unknown>[]): Uint8Array {
  const columns = columnsOf(kind);
  const lines = rows.map((row) => columns.map(({ key }) => String(row[key] ?? '')).join(','));
  return new TextEncoder().encode([columns.map((c) => c.heading).join(','), ...lines].join('\n'));
}

const EXAMPLE = { provenance: 'example', source: 'invented for a test' };
const ELBOW = {
  seat: 'flare-37',
  dash: 8,
  seatToBendMm: 20,
  bendToShoulderMm: 20,
  shoulderToMouthMm: 18,
  collarDiameterMm: 24,
  joint: 'crimp',
  material: 'steel',
  turning: 'swivel',
  ...EXAMPLE,
};

export function sampleFiles(): OpenedProject {
  const hose = {
    id: 'braided',
    name: 'Braided',
    construction: 'braided PTFE',
    core: 'ptfe-smooth',
    cover: 'steel-braid',
    dash: 8,
    insideDiameterMm: 11,
    outsideDiameterMm: 16,
    minBendRadiusMm: 80,
    minBendRadiusDatum: 'inside',
    maxPressureKpa: 7000,
    minTemperatureC: -50,
    maxTemperatureC: 200,
    ...EXAMPLE,
  };
  const ends = [
    { id: 'straight', name: 'Straight', bendAngleDeg: 0, ...ELBOW },
    { id: 'elbow', name: 'Elbow', bendAngleDeg: 90, ...ELBOW },
  ];
  return {
    label: 'sample',
    savesInPlace: true,
    projectText: JSON.stringify(SAMPLE_PROJECT),
    files: [
      { path: 'bay.stl', bytes: new Uint8Array(4) },
      { path: 'hoses.csv', bytes: csv('hoses', [hose]) },
      { path: 'ends.csv', bytes: csv('ends', ends) },
    ],
  };
}

const STRAIGHT_END: Lay['ends']['a'] = {
  seatPoint: [-40, 0, 0],
  bendPoint: [-20, 0, 0],
  shoulderPoint: [0, 0, 0],
  mouthPoint: [18, 0, 0],
  outletAxis: [-1, 0, 0],
  up: [0, 0, 1],
  hoseAxis: [1, 0, 0],
  ownClockDeg: 0,
  ownClockChosen: false,
};

/** A straight hose of 100 mm along +x. */
export function sampleLay(run: string, changes: Partial<Lay> = {}): Lay {
  return {
    run,
    outcome: 'laid',
    centreline: {
      points: [
        [0, 0, 0],
        [50, 0, 0],
        [100, 0, 0],
      ],
      arcLengthMm: [0, 50, 100],
    },
    outsideDiameterMm: 16,
    ends: {
      a: STRAIGHT_END,
      b: {
        ...STRAIGHT_END,
        seatPoint: [140, 0, 0],
        bendPoint: [120, 0, 0],
        shoulderPoint: [100, 0, 0],
        mouthPoint: [82, 0, 0],
        outletAxis: [1, 0, 0],
        hoseAxis: [-1, 0, 0],
      },
    },
    supports: [],
    cutLengthMm: 100,
    liveLengthMm: 64,
    tautLengthMm: 61,
    overallLengthMm: 180,
    cutOffMm: { a: 40, b: 40 },
    slack: 0.049,
    clock: { kind: 'free', reason: 'both-straight' },
    minRadius: { radiusMm: 500, provenAtLeastMm: 499, limitMm: 88, at: { arcLengthMm: 50, point: [50, 0, 0] } },
    straightTailMm: { a: 30, b: 30 },
    clearances: [],
    residual: 1e-9,
    timingsMs: {},
    ...changes,
  };
}

export function sampleFinding(run: string, changes: Partial<Finding> = {}): Finding {
  return {
    check: 'bendRadius',
    run,
    severity: 'look',
    rule: 'bend-radius',
    limit: 88,
    measured: 90,
    margin: 2,
    unit: 'mm',
    source: 'a source',
    message: 'close to the limit',
    ...changes,
  };
}

export function sampleReport(lays: readonly Lay[], findings: readonly Finding[] = []): LayReport {
  return {
    format: 'hosewright-lay-report',
    version: 1,
    solverVersion: 'test',
    seed: 1,
    project: { name: 'Sample', exampleData: false, inputHash: 'x' },
    lays: [...lays],
    findings: [...findings],
  };
}

/** A bench whose jobs end as told, and which remembers what was asked of it. `ends` may be changed as it goes on. */
export function sampleBench(
  ends: { [N in JobName]?: JobEnd<N> | Promise<JobEnd<N>> },
  shell: Partial<DesktopApi> = {},
) {
  const asked: { name: JobName; input: unknown }[] = [];
  const saved: { name: string; bytes: number }[] = [];
  const nothing = async () => ({ ok: true, value: { kind: 'not-saved' } }) as const;
  const desktop: DesktopApi = {
    openGiven: async () => ({ ok: true, value: sampleFiles() }),
    openDemo: async () => ({ ok: true, value: sampleFiles() }),
    exampleParts: async () => ({ ok: true, value: sampleFiles() }),
    taken: async () => undefined,
    beginNew: async () => undefined,
    chooseProject: async () => null,
    recentProjects: async () => [],
    openRecent: async () => ({ ok: true, value: sampleFiles() }),
    forgetRecent: async () => [],
    chooseFiles: async () => null,
    saveProject: async () => ({ ok: true, value: { kind: 'saved', where: 'the project folder' } }),
    saveFile: async (name, bytes) => {
      saved.push({ name, bytes: bytes.length });
      return { ok: true, value: { kind: 'saved', where: name } };
    },
    saveFiles: nothing,
    onMenu: () => () => undefined,
    ...shell,
  };
  const start = <N extends JobName>(name: N, input: JobInput<N>) => {
    asked.push({ name, input });
    const end = (ends[name] ?? { kind: 'cancelled' }) as JobEnd<N> | Promise<JobEnd<N>>;
    return { end: Promise.resolve(end), cancel: () => undefined };
  };
  const bench = createBench(
    {
      jobs: { start },
      desktop,
      paperFonts: async () => ({ regular: new Uint8Array(), bold: new Uint8Array() }),
      today: () => '2026-11-25',
    },
    { theme: 'light', units: 'mm' },
  );
  return { bench, asked, saved, ends };
}

/** What `openProject` answers for the sample: one triangle. */
export const SAMPLE_BAY = {
  kind: 'done',
  output: {
    bay: {
      positions: new Float32Array([0, 0, 0, 10, 0, 0, 0, 10, 0]),
      indices: new Uint32Array([0, 1, 2]),
      parts: [{ name: 'plate', firstTriangle: 0, triangleCount: 1, skin: 'plain', body: 'chassis' }],
    },
    warnings: [],
  },
} as const satisfies JobEnd<'openProject'>;
