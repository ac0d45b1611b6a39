import { createStore } from 'zustand/vanilla';
import { skinOfPart } from '../../shared/document/project/skinOfPart.ts';
import { sweepOfSkin } from '../../shared/document/project/sweepOfSkin.ts';
import type { JobInput } from '../../shared/jobs/contract.ts';
import type { DocumentStore, OpenDocument } from './documentStore.ts';
import type { BenchPorts } from './ports.ts';
import type { SessionStore } from './sessionStore.ts';

/** What the moving skin whose values are open sweeps. */
export interface SweepState {
  /** corners of its triangles, x, y, z, mm; those of before stay until the new ones are there; `null` = nothing is shown */
  readonly corners: Float32Array | null;
  /** 0 to 1 while it is worked out */
  readonly fraction: number | null;
}

interface SweepNeeds {
  readonly document: DocumentStore;
  readonly session: SessionStore;
  readonly jobs: BenchPorts['jobs'];
}

const NOTHING: SweepState = { corners: null, fraction: null };
/** ms without a further change of how it moves after which what it sweeps is worked out: a second or two of a great turn. */
const REST_MS = 160;

/** Works out what a moving skin sweeps whenever its values are open and something about it changed; what is under way for what it was before is stopped. */
export function createOnSweep({ document, session, jobs }: SweepNeeds) {
  const store = createStore<SweepState>(() => NOTHING);
  let resting: ReturnType<typeof setTimeout> | undefined;
  let cancel: (() => void) | null = null;
  let of: readonly unknown[] = [];

  const stop = (): void => {
    clearTimeout(resting);
    cancel?.();
    cancel = null;
    store.setState({ fraction: null });
  };

  const work = async (input: JobInput<'sweepParts'>): Promise<void> => {
    const mine = of;
    store.setState({ fraction: 0 });
    const job = jobs.start('sweepParts', input, ({ fraction }) => of === mine && store.setState({ fraction }));
    cancel = job.cancel;
    const end = await job.end;
    if (of !== mine) return;
    cancel = null;
    store.setState({ fraction: null, ...(end.kind === 'done' && { corners: end.output.corners }) });
  };

  const look = (): void => {
    const { step, skin } = session.getState();
    const { open } = document.getState();
    const now = step === 'bay' && open !== null ? [skin, open.bay, open.history.present.bay.skins] : [];
    if (now.length === of.length && now.every((part, i) => part === of[i])) return;
    const isSame = now[0] === of[0] && now[1] === of[1];
    of = now;
    stop();
    const input = open === null || now.length === 0 ? null : movingParts(open, skin);
    if (input === null || !isSame) store.setState(NOTHING);
    if (input !== null) resting = setTimeout(() => void work(input), REST_MS);
  };
  document.subscribe(look);
  session.subscribe(look);
  return { ...store, stop };
}

export type OnSweep = ReturnType<typeof createOnSweep>;

/** The parts of a moving skin as a mesh by themselves, and how they move; `null` where there are none or they do not. */
function movingParts({ bay, history }: OpenDocument, id: string | null): JobInput<'sweepParts'> | null {
  const project = history.present;
  const skin = project.bay.skins.find((one) => one.id === id);
  const sweep = skin && sweepOfSkin(skin);
  if (bay === null || skin === undefined || sweep === undefined) return null;
  const own = bay.parts.filter(({ name }) => skinOfPart(project, name).id === skin.id);
  const triangles = own.reduce((sum, { triangleCount }) => sum + triangleCount, 0);
  if (triangles === 0) return null;
  const positions = new Float32Array(9 * triangles);
  let firstTriangle = 0;
  const parts = own.map(({ name, firstTriangle: from, triangleCount }) => {
    for (let corner = 0; corner < 3 * triangleCount; corner++) {
      const at = 3 * (bay.indices[3 * from + corner] as number);
      positions.set(bay.positions.subarray(at, at + 3), 9 * firstTriangle + 3 * corner);
    }
    firstTriangle += triangleCount;
    return { name, firstTriangle: firstTriangle - triangleCount, triangleCount };
  });
  return { mesh: { positions, indices: Uint32Array.from({ length: 3 * triangles }, (_, i) => i), parts }, sweep };
}
