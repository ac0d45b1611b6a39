import type { Part } from '../../../shapes/part.ts';
/** Parts that rock with the engine; everything else stands on the chassis. Unions follow their port. */
export declare function engineBodyParts(): Part[];
export declare function chassisParts(): Part[];
/** The whole example bay, mm, bay frame: X rearward from the firewall, Y to the car's right, Z up. */
export declare function hillclimbBay(): Part[];
