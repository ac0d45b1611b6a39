import type { Project } from '../../../../shared/document/project/schema.ts';
export declare const MESH_FILE = 'hillclimb-bay.glb';
/** The project of the example bay, for the mesh whose bytes are given. */
export declare function hillclimbProject(mesh: Uint8Array): Project;
/** The project as the text of its file: two spaces, short number lists on one line, a newline at the end. */
export declare function projectText(project: Project): string;
