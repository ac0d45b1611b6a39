import { type Part } from '../../../shapes/part.ts';
export declare function driveParts(): Part[];
export declare function gearboxParts(): Part[];
