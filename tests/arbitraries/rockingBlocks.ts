import { Motion } from '../../shared/document/project/schema.ts';
import { type BlockBay, blockBay } from './blockBays.ts';

/** Of `rockingBlocks`: the far plate and every other block are the engine. */
export const ENGINE_BLOCKS: readonly string[] = ['block-1', 'block-3', 'block-5'];

/** A seeded bay of blocks of which some are an engine that rolls, yaws and shifts; END B of both runs is on it. */
export function rockingBlocks(seed: number): BlockBay {
  const { mesh, bay, project } = blockBay(seed, 5, 2);
  const motion = Motion.parse({ pivot: [700, 300, 200], rollDeg: [-2, 3], yawDeg: [0, 2], shiftMm: { x: [-6, 6] } });
  project.project.bay.bodies.push({ id: 'engine', name: 'Engine', parts: [...ENGINE_BLOCKS], motion });
  const runs = project.runs.map((r) => ({ ...r, b: { ...r.b, port: { ...r.b.port, body: 'engine' } } }));
  return { mesh, bay, project: { ...project, runs } };
}
