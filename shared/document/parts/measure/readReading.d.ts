import type { Reading } from './readings.ts';
/** A reading as a number, mm or degrees, or why it is none, in a sentence. */
export type ReadingResult = {
    readonly ok: true;
    readonly value: number;
} | {
    readonly ok: false;
    readonly message: string;
};
/** One reading as it was typed; a bare number of a length is in `unit`. Lengths are above 0, the bend between 0 and 180. */
export declare function readReading(reading: Reading, text: string, unit: 'mm' | 'in'): ReadingResult;
