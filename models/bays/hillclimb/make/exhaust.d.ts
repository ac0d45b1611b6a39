import { type Part } from '../../../shapes/part.ts';
export declare function manifold(): Part[];
export declare function wastegate(): Part[];
export declare function downpipe(): Part;
export declare function exhaustParts(): Part[];
