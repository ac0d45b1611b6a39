import { type Part } from '../../../shapes/part.ts';
export declare function serviceParts(): Part[];
