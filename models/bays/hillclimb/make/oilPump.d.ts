import { type Part } from '../../../shapes/part.ts';
/** The dry-sump pump: four stages bolted together beside the block, and the shaft forward to its pulley. */
export declare function oilPump(): Part[];
