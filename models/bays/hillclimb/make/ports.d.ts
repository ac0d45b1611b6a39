import { type Vec3 } from '../../../../shared/base/vec3.ts';
/** A port of the example bay: the one statement that both the modelled union and the project's port are made from. */
export interface BayPort {
  readonly id: string;
  readonly name: string;
  readonly seatPoint: Vec3;
  readonly axis: Vec3;
  readonly up: Vec3;
  readonly dash: number;
  readonly body: 'engine' | 'chassis';
  /** from the face the union is screwed into to the seat, mm */
  readonly standMm: number;
  /** a cast boss below the union reaches this far back into the part, mm; 0 = none */
  readonly bossMm: number;
}
/** Middle of the turbocharger's centre housing; its shaft runs along X. */
export declare const TURBO: Vec3;
/** Axis of the dry-sump tank (x, y). */
export declare const TANK: readonly [number, number];
export declare const PORTS: readonly BayPort[];
export declare function portById(id: string): BayPort;
