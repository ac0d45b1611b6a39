/**
 * What the core asks of its host beyond the language itself: everything on this list exists in browsers, in their workers
 * and in Node. Nothing else of a host may be used in `shared/`.
 */

/** Text of mesh and table files. */
declare class TextDecoder {
  constructor(label?: string, options?: { fatal?: boolean; ignoreBOM?: boolean });
  decode(bytes?: Uint8Array): string;
}
