import { type Part } from '../../../shapes/part.ts';
import { type BayPort } from './ports.ts';
/** A union at every port, on its cast boss, each a part named after its port. */
export declare function unions(): Part[];
/** The cast bosses the unions are screwed into, to be joined to the part that carries them. */
export declare function bossOf(port: BayPort): import('../../../shapes/solid.ts').Solid;
