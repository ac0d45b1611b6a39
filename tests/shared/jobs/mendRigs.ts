import type { Run } from '../../../shared/document/project/schema.ts';
import { sampleSleeve } from '../../arbitraries/projects.ts';
import { exampleEnd, exampleHose } from '../../arbitraries/rig.ts';
import type { Story } from '../../stories/storyBay.ts';

/** Small jobs that each have something to mend. All of it is invented. */
const HOSE = exampleHose({ insideDiameterMm: 9, outsideDiameterMm: 14, minBendRadiusMm: 60 });
const BENCH = { name: 'bench', min: [-300, -400, -500], max: [1300, 400, -480] } as const;
const SHORT = { seatToBendMm: 0, bendToShoulderMm: 20, shoulderToMouthMm: 15 };

type Place = readonly [number, number, number];

function job(
  ports: readonly { readonly seatPoint: Place; readonly axis: Place; readonly up: Place; readonly body?: string }[],
  run: Partial<Run>,
  more: Partial<Omit<Story, 'project'>> = {},
): Story {
  return {
    blocks: [BENCH],
    hoses: [HOSE],
    ends: [exampleEnd(0, SHORT)],
    ...more,
    project: {
      ports: ports.map(({ seatPoint, axis, up, ...more }, i) => ({
        ...more,
        id: `p${i}`,
        name: `Port ${i}`,
        seatPoint: [...seatPoint],
        axis: [...axis],
        up: [...up],
        seat: 'flare-37',
        dash: 8,
      })),
      runs: [
        {
          id: 'line',
          name: 'Line',
          a: { port: 'p0', end: 'end-0' },
          b: { port: 'p1', end: 'end-0' },
          service: { purpose: 'oil-pressure', fluid: 'engine-oil', pressureKpa: 600, temperatureC: 110 },
          hose: HOSE.id,
          slack: 0.06,
          supports: [],
          ...run,
        },
      ],
    },
  };
}

/** Two ports that face each other so many mm apart. */
function faceToFace(apartMm: number, body?: string) {
  return [
    { seatPoint: [0, 0, 0], axis: [1, 0, 0], up: [0, 0, 1] },
    { seatPoint: [apartMm, 0, 0], axis: [-1, 0, 0], up: [0, 0, 1], ...(body === undefined ? {} : { body }) },
  ] as const;
}

/** A hose cut already, to 2 % over the 330 mm that lie taut between the mouths of two ends of 35 mm: too short to breathe. */
export const TIGHT = job(faceToFace(400), { cutLengthMm: 1.02 * 330 + 2 * 15 });

/** A hose that rises and falls between a fixed port and one on an engine that pulls away from it by 20 mm: with the usual slack it goes tight. */
export const PULLED = job(
  faceToFace(400, 'engine'),
  {},
  {
    bay: {
      bodies: [
        {
          id: 'engine',
          name: 'Engine',
          parts: [],
          motion: {
            pivot: [400, 0, 0],
            rollDeg: [0, 0],
            pitchDeg: [0, 0],
            yawDeg: [0, 0],
            shiftMm: { x: [0, 20], y: [0, 0], z: [0, 0] },
          },
        },
      ],
    },
  },
);

/** Nothing holds it for nearly a metre; there is a clamp for it. */
export const LOOSE = job(
  faceToFace(1000),
  {},
  {
    clamps: [
      {
        id: 'clamp-14',
        name: 'Clamp 13 to 15',
        holdsFromMm: 13,
        holdsToMm: 15,
        standOffMm: 11,
        widthMm: 15,
        material: 'steel',
        maxTemperatureC: 200,
        provenance: 'example',
        source: 'invented for tests',
      },
    ],
  },
);

/** Bare steel braid that lies within reach of a composite panel beside it; sleeves of which one goes over the hose, and a hose with polyester braid. */
export const SAWING = job(
  faceToFace(400),
  {},
  {
    blocks: [BENCH, { name: 'panel', min: [120, -40, -100], max: [280, -22, 100] }],
    bay: { skins: [{ id: 'panel', name: 'Panel', kind: 'composite', parts: ['panel'], clearanceMm: 3 }] },
    hoses: [HOSE, exampleHose({ ...HOSE, id: 'soft', name: 'Soft hose', cover: 'polyester-braid' })],
    sleeves: [
      sampleSleeve({ id: 'small', insideDiameterMm: 12, outsideDiameterMm: 15 }),
      sampleSleeve({ id: 'fits', insideDiameterMm: 15, outsideDiameterMm: 18 }),
    ],
  },
);

/** Petrol in a PTFE core that is not conductive; of the other hoses on the shelf one is, and one does not bear the pressure. */
export const CHARGING = job(
  faceToFace(400),
  { service: { purpose: 'fuel', fluid: 'petrol', pressureKpa: 400, temperatureC: 40 } },
  {
    hoses: [
      exampleHose({ ...HOSE, conductiveCore: false }),
      exampleHose({ ...HOSE, id: 'conductive', name: 'Conductive hose' }),
      exampleHose({ ...HOSE, id: 'weak', name: 'Weak hose', maxPressureKpa: 100 }),
      exampleHose({ ...HOSE, id: 'larger', name: 'Larger hose', dash: 10 }),
    ],
  },
);

/** Two ports on one wall that face the same way, a hot pipe above: with straight ends the hose goes over too near to it. */
export const UNDER_HEAT = job(
  [
    { seatPoint: [0, 0, 0], axis: [0, 0, 1], up: [1, 0, 0] },
    { seatPoint: [320, 0, 0], axis: [0, 0, 1], up: [-1, 0, 0] },
  ],
  {},
  {
    blocks: [BENCH, { name: 'pipe', min: [-400, -400, 200], max: [720, 400, 240] }],
    bay: {
      skins: [{ id: 'pipe', name: 'Pipe', kind: 'hot', parts: ['pipe'], surfaceTemperatureC: 300, clearanceMm: 70 }],
    },
    ends: [0, 45, 90].map((angle) =>
      exampleEnd(angle, { ...SHORT, seatToBendMm: angle === 0 ? 0 : 30, bendToShoulderMm: 20 }),
    ),
  },
);
