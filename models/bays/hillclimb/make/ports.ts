import { addScaled, rejectFrom, unit, type Vec3 } from '../../../../shared/base/vec3.ts';
import type { Port } from '../../../../shared/document/project/schema.ts';

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

/** What goes in a port that is no flare, and what is screwed on it, by the port's id. */
export const ADAPTERS: Readonly<Record<string, Required<Pick<Port, 'seat' | 'adapters'>>>> = {
  // The oil gallery takes a banjo, turned up: the hose leaves along the back of the head, clear of the bulkhead.
  'gallery-feed': {
    seat: 'banjo-m10',
    adapters: [{ adapter: 'banjo-m10-flare-4', outlet: 'straight', clockDeg: 0 }],
  },
};

/** Middle of the turbocharger's centre housing; its shaft runs along X. */
export const TURBO: Vec3 = [815, 320, 505];
/** Axis of the dry-sump tank (x, y). */
export const TANK: readonly [number, number] = [105, 255];

const UP: Vec3 = [0, 0, 1];
const REAR: Vec3 = [1, 0, 0];
/** The lower water union of the turbo has its 12 o'clock towards the drain, where its hose must leave to rise all the way. */
const DOWN: Vec3 = [0, 0, -1];

function port(
  id: string,
  name: string,
  dash: number,
  body: BayPort['body'],
  seatPoint: Vec3,
  axis: Vec3,
  standMm: number,
  bossMm = 0,
): BayPort {
  const along = unit(axis);
  const mark: Vec3 = id === 'turbo-water-inlet' ? DOWN : UP;
  const up = unit(rejectFrom(Math.abs(along[2]) > 0.9 ? REAR : mark, along));
  return {
    id,
    name,
    dash,
    body,
    seatPoint: rounded(seatPoint),
    axis: rounded(along, 6),
    up: rounded(up, 6),
    standMm,
    bossMm,
  };
}

/** Numbers as they stand in the project file. */
function rounded(v: Vec3, digits = 3): Vec3 {
  const f = 10 ** digits;
  return v.map((c) => Math.round(c * f) / f + 0) as unknown as Vec3;
}

function around(deg: number): Vec3 {
  const a = (deg * Math.PI) / 180;
  return [0, Math.cos(a), Math.sin(a)];
}

/** From the tank's axis outward and rearward, so many degrees off the car's length: room for large bends to the pump. */
function fromTank(deg: number): Vec3 {
  return [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180), 0];
}

function onTank(z: number, deg: number): Vec3 {
  return addScaled([...TANK, z], fromTank(deg), 100);
}

export const PORTS: readonly BayPort[] = [
  port('gallery-feed', 'Oil gallery, rear of head', 4, 'engine', [828, 30, 520], [1, 0, 0], 20, 30),
  port('turbo-oil-inlet', 'Turbo oil inlet', 4, 'engine', [TURBO[0], TURBO[1], 565], [0, 0, 1], 20),
  port('turbo-oil-outlet', 'Turbo oil outlet', 10, 'engine', [TURBO[0], TURBO[1], 440], [0, 0, -1], 22),
  port('crankcase-drain', 'Crankcase drain boss', 10, 'engine', [795, 145, 250], [0, 1, 0], 22, 40),
  port('turbo-water-inlet', 'Turbo water inlet', 6, 'engine', addScaled(TURBO, around(-25), 70), around(-25), 18, 30),
  port('turbo-water-outlet', 'Turbo water outlet', 6, 'engine', addScaled(TURBO, around(35), 70), around(35), 18, 30),
  port('block-water', 'Block water boss', 6, 'engine', [560, 150, 300], [0, 1, 0], 18, 40),
  port('pump-scavenge-out', 'Scavenge outlet', 12, 'engine', [490, 228, 215], [0, 1, 0], 22, 20),
  port('pump-pressure', 'Oil pump pressure outlet', 10, 'engine', [545, 226, 215], [0, 1, 0], 20, 20),
  port('pump-suction', 'Oil pump suction', 12, 'engine', [600, 228, 215], [0, 1, 0], 22, 20),
  port('filter-head', 'Oil filter head inlet', 10, 'engine', [735, 205, 372], [0, 1, 0], 20),
  port('fuel-rail', 'Fuel rail inlet', 6, 'engine', [370, -165, 535], [-1, 0, 0], 18),
  port('cam-cover-breather', 'Cam cover breather', 12, 'engine', [600, 20, 662], [0, 0, 1], 20, 16),
  port('water-outlet', 'Cylinder head water outlet', 16, 'engine', [318, -60, 540], [-1, 0, 0], 24, 30),
  port('water-pump-inlet', 'Water pump inlet', 16, 'engine', [420, -146, 270], [0, -1, 0], 24, 14),
  port('tank-suction', 'Dry-sump tank outlet', 12, 'chassis', onTank(185, 30), fromTank(30), 20, 14),
  port('tank-return', 'Dry-sump tank return', 12, 'chassis', onTank(430, 30), fromTank(30), 20, 14),
  port('tank-vent', 'Dry-sump tank vent', 12, 'chassis', [...TANK, 606], [0, 0, 1], 20, 8),
  port('catch-tank-inlet', 'Catch tank inlet', 12, 'chassis', [144, 60, 662], [1, 0, 0], 20, 10),
  port('catch-tank-vent', 'Catch tank second inlet', 12, 'chassis', [77, 127, 650], [0, 1, 0], 20, 10),
  port('cooler-inlet', 'Oil cooler inlet', 10, 'chassis', [505, 520, 310], [1, 0, 0], 20, 6),
  port('cooler-outlet', 'Oil cooler outlet', 10, 'chassis', [505, 520, 445], [1, 0, 0], 20, 6),
  port('swirl-inlet', 'Swirl pot inlet', 6, 'chassis', [390, 345, 650], [1, 0, 0], 18, 8),
  port('fuel-filter-outlet', 'Fuel filter outlet', 6, 'chassis', [-190, -330, 120], [1, 0, 0], 18),
  port('radiator-inlet', 'Radiator inlet', 16, 'chassis', [140, -510, 426], [0, 0, 1], 24, 6),
  port('radiator-outlet', 'Radiator outlet', 16, 'chassis', [110, -470, 165], [0, 1, 0], 24, 6),
];

export function portById(id: string): BayPort {
  const found = PORTS.find((p) => p.id === id);
  if (found === undefined) throw new Error(`portById: no port ${id}`);
  return found;
}
