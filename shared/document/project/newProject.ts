import type { LengthUnit } from '../../base/units.ts';
import { type BayMesh, PROJECT_FORMAT, PROJECT_VERSION, type Project } from './schema.ts';

/** What a bay is that was never worked on: its meshes, and how far they may be off. */
export interface NewBay {
  readonly name: string;
  readonly meshes: readonly { readonly path: string; readonly sha256: string }[];
  readonly unit: LengthUnit;
  readonly upAxis: BayMesh['upAxis'];
  readonly scanUncertaintyMm: number;
  readonly tables: Project['tables'];
}

/** A project with a bay and parts, and nothing on it yet: no skins, ports or runs. */
export function newProject({ name, meshes, unit, upAxis, scanUncertaintyMm, tables }: NewBay): Project {
  return {
    format: PROJECT_FORMAT,
    version: PROJECT_VERSION,
    name,
    exampleData: false,
    bay: {
      meshes: meshes.map(({ path, sha256 }) => ({ path, sha256, unit, upAxis })),
      scanUncertaintyMm,
      skins: [],
      bodies: [],
    },
    tables,
    ports: [],
    runs: [],
    overrides: [],
    seed: 1,
  };
}
