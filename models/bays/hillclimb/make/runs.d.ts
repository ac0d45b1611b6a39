import type { Run } from '../../../../shared/document/project/schema.ts';
/** The hoses of the example bay. Each README row says which of them are traps. */
export declare const RUNS: readonly Run[];
