import { type Solid } from './solid.ts';
/** What a part is made of, for its colour in a picture; the program's skins are stated in the project, not here. */
export declare const FINISHES: readonly [
  'cast',
  'machined',
  'steel',
  'rust',
  'black',
  'composite',
  'glass',
  'brass',
  'wire',
];
export type Finish = (typeof FINISHES)[number];
export interface Part {
  readonly name: string;
  readonly finish: Finish;
  readonly solid: Solid;
}
export declare function part(name: string, finish: Finish, ...solids: readonly Solid[]): Part;
