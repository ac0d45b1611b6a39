/** Mesh files in: the public face of the readers. */
export { guessUnit } from './guessUnit.ts';
export type { ImportedMesh, MeshFormat } from './importedMesh.ts';
export { mergeMeshes } from './mergeMeshes.ts';
export { openMesh } from './openMesh.ts';
export { placeMesh, UP_AXES, type UpAxis } from './placeMesh.ts';
