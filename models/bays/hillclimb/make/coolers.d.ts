import { type Part } from '../../../shapes/part.ts';
export declare function coolerParts(): Part[];
