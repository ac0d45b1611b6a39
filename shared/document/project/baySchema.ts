import { z } from 'zod';
import { LENGTH_UNITS } from '../../base/units.ts';
import { direction, finite, id, name, nonNegative, point, positive, relativePath } from './fields.ts';

/** The bay of a project: its meshes, what their parts are and how they move, its air and its oil. */
export const BayMesh = z.strictObject({
  path: relativePath.describe('relative to the project file'),
  sha256: z
    .string()
    .regex(/^[0-9a-f]{64}$/, 'expected 64 hexadecimal digits')
    .describe('of the file as it was when ports were placed on it'),
  unit: z.enum(LENGTH_UNITS).describe('what one number in the mesh file means'),
  upAxis: z.enum(['+x', '-x', '+y', '-y', '+z', '-z']).describe('which axis of the mesh file points up'),
});

export const SKIN_KINDS = ['plain', 'hot', 'composite', 'sharp-edge', 'moving', 'wiring'] as const;
export const SKIN_MATERIALS = ['steel', 'aluminium', 'composite', 'plastic', 'rubber'] as const;

/** How the parts of a moving skin move from where they were scanned, which is 0. */
export const SkinSweep = z.discriminatedUnion('kind', [
  z
    .strictObject({
      kind: z.literal('turn'),
      point: point.describe('on the axis'),
      axis: direction,
      fromDeg: finite.optional().describe('right-handed about the axis; absent, and toDeg too = all round'),
      toDeg: finite.optional(),
    })
    .refine(({ fromDeg, toDeg }) => (fromDeg === undefined) === (toDeg === undefined), {
      message: 'a part of a turn needs fromDeg and toDeg; without both it goes all round',
      path: ['toDeg'],
    })
    .refine(({ fromDeg = 0, toDeg = 360 }) => fromDeg < toDeg, {
      message: 'expected toDeg above fromDeg',
      path: ['toDeg'],
    }),
  z
    .strictObject({ kind: z.literal('stroke'), direction, fromMm: finite, toMm: finite })
    .refine(({ fromMm, toMm }) => fromMm < toMm, { message: 'expected toMm above fromMm', path: ['toMm'] }),
]);

export const Skin = z
  .strictObject({
    id,
    name,
    kind: z.enum(SKIN_KINDS),
    parts: z.array(name).describe('names of bay parts; * stands for any letters'),
    surfaceTemperatureC: finite.optional().describe('of a hot skin, running'),
    emissivity: positive
      .max(1)
      .optional()
      .describe('of a hot skin: what it radiates over what a black one would; absent = as oxidised metal'),
    clearanceMm: nonNegative
      .optional()
      .describe('own clearance from hose surface to this skin; else the rule for its kind'),
    sweep: SkinSweep.optional().describe(
      'of a moving skin: its parts are kept clear of wherever they move; absent = as scanned',
    ),
    material: z
      .enum(SKIN_MATERIALS)
      .optional()
      .describe('of its parts, where bare braid may rub them; absent = not known, or composite by its kind'),
  })
  .refine((s) => s.sweep === undefined || s.kind === 'moving', {
    message: 'only a moving skin sweeps',
    path: ['sweep'],
  })
  .refine((s) => s.kind !== 'hot' || s.surfaceTemperatureC !== undefined, {
    message: 'a hot skin needs its surfaceTemperatureC',
    path: ['surfaceTemperatureC'],
  });

/** deg. A body that turns further than this does not rock on its mounts, and the corners of its ranges are too far apart to tell what lies between. */
export const MOST_ROCK_DEG = 45;

function rangeWithRest(unit: string) {
  return z
    .tuple([finite, finite])
    .refine(([least, most]) => least <= 0 && most >= 0, 'expected [least, most] with rest, 0, between them')
    .default([0, 0])
    .describe(`[least, most], ${unit}; absent = does not`);
}

function turnRange(about: string) {
  return rangeWithRest(`deg, right-handed about ${about} through the pivot`).refine(
    (range) => range.every((deg) => Math.abs(deg) <= MOST_ROCK_DEG),
    `expected turns of at most ${MOST_ROCK_DEG} degrees`,
  );
}

export const Motion = z
  .strictObject({
    pivot: point.describe('what the body turns about'),
    rollDeg: turnRange("the bay's X axis"),
    pitchDeg: turnRange("the bay's Y axis"),
    yawDeg: turnRange("the bay's Z axis, up"),
    shiftMm: z
      .strictObject({
        x: rangeWithRest("mm along the bay's X axis"),
        y: rangeWithRest("mm along the bay's Y axis"),
        z: rangeWithRest("mm along the bay's Z axis, up"),
      })
      .prefault({}),
  })
  .describe(
    'how a body moves on its mounts, rigidly, from where it was scanned: turned about the pivot by roll, then pitch, then yaw, each about the axis of the bay (which do not turn with the body), then shifted',
  );

export const Body = z.strictObject({ id, name, parts: z.array(name), motion: Motion.optional() });

const alongXAndY = (most: number, what: string) =>
  z
    .strictObject({ x: finite.min(-most).max(most).default(0), y: finite.min(-most).max(most).default(0) })
    .prefault({})
    .describe(what);

/** deg and g: what a car, a boat or a machine of this kind stands on, leans to or pulls. */
export const MOST_GRADE_DEG = 40;
export const MOST_ACCELERATION_G = 5;

export const Attitude = z
  .strictObject({
    name: name.describe('as it is read in a sentence: braking, a left-hand bend, a steep drive'),
    gradeDeg: alongXAndY(
      MOST_GRADE_DEG,
      "how steeply the bay's X and Y axes point uphill, deg; below zero downhill; also a lean or a heel",
    ),
    accelerationG: alongXAndY(
      MOST_ACCELERATION_G,
      "of the car, in g, along the bay's X and Y axes; braking is against the way it drives, a bend towards its inside",
    ),
  })
  .describe('how the bay stands or is driven, beside level and at rest');

export const CutOut = z
  .strictObject({
    name: name.describe('of the part it becomes'),
    of: name.optional().describe('the part it is cut out of; absent = whatever lies in the box'),
    corner: point,
    edges: z.tuple([point, point, point]).describe('of the box, from its corner'),
  })
  .describe('a piece of the scan that is a part of its own: the triangles whose middle lies in a box');

export const Bay = z.strictObject({
  meshes: z.array(BayMesh).min(1),
  scale: positive.optional().describe('true length over length in the meshes, from a length that is known; absent = 1'),
  level: direction
    .optional()
    .describe(
      'which way is truly up, as the meshes lie by their upAxis; the bay is turned by the least rotation that brings it to +Z; absent = +Z',
    ),
  scanUncertaintyMm: nonNegative.describe('how far the mesh may lie from the real surface; added to every clearance'),
  airTemperatureC: finite.optional().describe("of the bay's air, running; absent = assumed"),
  airSpeedMPerS: nonNegative.optional().describe('of the air across the hoses, running; absent = assumed'),
  soakAirTemperatureC: finite
    .optional()
    .describe("of the bay's air once the engine is off and it stands; absent = assumed"),
  oilLevel: point
    .optional()
    .describe(
      "middle of the oil's surface in the sump, car level; where it leans or is driven the surface turns about this point",
    ),
  attitudes: z.array(Attitude).optional().describe('at which drains are looked at, beside level and at rest'),
  cutOuts: z
    .array(CutOut)
    .optional()
    .describe(
      'pieces of the meshes that are parts of their own, one after the other; their boxes are in mm as the meshes lie by unit and upAxis, before scale and level',
    ),
  leftOut: z
    .array(name)
    .optional()
    .describe(
      'parts that are not there when the hoses are: old pipes, the scan of a stand; names, * stands for any letters',
    ),
  skins: z.array(Skin).describe('parts in no skin are plain'),
  bodies: z.array(Body).describe('parts in no body belong to the chassis'),
});

export type BayMesh = z.infer<typeof BayMesh>;
export type Skin = z.infer<typeof Skin>;
export type SkinKind = Skin['kind'];
export type SkinSweep = z.infer<typeof SkinSweep>;
export type SkinMaterial = NonNullable<Skin['material']>;
export type Motion = z.infer<typeof Motion>;
export type Body = z.infer<typeof Body>;
export type Attitude = z.infer<typeof Attitude>;
export type CutOut = z.infer<typeof CutOut>;
export type Bay = z.infer<typeof Bay>;

/** The skin of every part that the project puts in none. */
export const PLAIN_SKIN: Skin = { id: 'plain', name: 'Plain', kind: 'plain', parts: [] };
/** The body of every part and port that the project puts in none. */
export const CHASSIS_BODY: Body = { id: 'chassis', name: 'Chassis', parts: [] };
