import type { Clamp } from '../../../shared/document/parts/schema.ts';
import type { Run } from '../../../shared/document/project/schema.ts';
import { exampleAdapter } from '../../arbitraries/adapters.ts';
import { motionAbout } from '../../arbitraries/motions.ts';
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

const CLAMP_14: Clamp = {
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
};

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
          motion: motionAbout([400, 0, 0], { shiftMm: { x: [0, 20] } }),
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
    clamps: [CLAMP_14],
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

/** Diesel in a PTFE core that is not conductive; the hose that is has bare steel braid, which lies within reach of an aluminium panel. There is a sleeve. */
export const CHARGED_BY_A_PANEL = job(
  faceToFace(400),
  { service: { purpose: 'fuel', fluid: 'diesel', pressureKpa: 400, temperatureC: 40 } },
  {
    blocks: [BENCH, { name: 'panel', min: [120, -40, -100], max: [280, -22, 100] }],
    bay: {
      skins: [{ id: 'panel', name: 'Panel', kind: 'plain', material: 'aluminium', parts: ['panel'], clearanceMm: 3 }],
    },
    hoses: [
      exampleHose({ ...HOSE, conductiveCore: false, cover: 'polyester-braid' }),
      exampleHose({ ...HOSE, id: 'conductive', name: 'Conductive hose' }),
    ],
    sleeves: [sampleSleeve({ id: 'fits', insideDiameterMm: 15, outsideDiameterMm: 18 })],
  },
);

/**
 * Two ports on one wall that face the same way, a hot pipe above: with straight ends the hose goes over too near to it. The bay is no larger
 * than that takes: changes that find no way are looked through all of it.
 */
export const UNDER_HEAT = job(
  [
    { seatPoint: [0, 0, 0], axis: [0, 0, 1], up: [1, 0, 0] },
    { seatPoint: [320, 0, 0], axis: [0, 0, 1], up: [-1, 0, 0] },
  ],
  {},
  {
    blocks: [
      { name: 'wall', min: [-60, -60, -60], max: [380, 60, -40] },
      { name: 'pipe', min: [-60, -60, 200], max: [380, 60, 240] },
    ],
    bay: {
      skins: [{ id: 'pipe', name: 'Pipe', kind: 'hot', parts: ['pipe'], surfaceTemperatureC: 300, clearanceMm: 70 }],
    },
    ends: [0, 45, 90].map((angle) =>
      exampleEnd(angle, { ...SHORT, seatToBendMm: angle === 0 ? 0 : 30, bendToShoulderMm: 20 }),
    ),
  },
);

/** Oil to a pump through 9 mm; there is a hose of 26 mm, with its ends and what screws a -12 on a -8. */
export const STARVED = job(
  faceToFace(800),
  {
    slack: 0.05,
    service: {
      purpose: 'oil-suction',
      fluid: 'engine-oil',
      pressureKpa: -10,
      temperatureC: 100,
      flowLPerMin: 45,
      viscosityMm2PerS: 15,
    },
  },
  {
    hoses: [
      HOSE,
      exampleHose({
        ...HOSE,
        id: 'wide',
        name: 'Wide hose',
        dash: 12,
        insideDiameterMm: 26,
        outsideDiameterMm: 33,
        minBendRadiusMm: 40,
      }),
    ],
    ends: [exampleEnd(0, SHORT), exampleEnd(0, { ...SHORT, id: 'end-12', dash: 12, collarDiameterMm: 40 })],
    adapters: [exampleAdapter({ id: 'widens', portSeat: 'flare-37', dash: 12, diameterMm: 40 })],
  },
);

/** A clamp that bears 80 deg C on oil of 110, in a bay where something is hot; there is one that bears more. */
export const COOKED = job(
  faceToFace(400),
  { supports: [{ id: 'c', kind: 'clamp', point: [200, 0, 0], axis: [1, 0, 0], part: 'soft' }] },
  {
    blocks: [BENCH, { name: 'pipe', min: [-100, -320, -100], max: [500, -280, 0] }],
    bay: { skins: [{ id: 'pipe', name: 'Pipe', kind: 'hot', parts: ['pipe'], surfaceTemperatureC: 250 }] },
    clamps: [
      { ...CLAMP_14, id: 'soft', name: 'Soft clamp', maxTemperatureC: 80 },
      { ...CLAMP_14, id: 'tough', name: 'Tough clamp', maxTemperatureC: 250 },
    ],
  },
);

const SIDE_BY_SIDE_MM = 25;
const besideIt = (y: number, id: string) => ({
  id,
  kind: 'clamp' as const,
  point: [300, y, 0] as [number, number, number],
  axis: [1, 0, 0] as [number, number, number],
});
const lowPressure = job(faceToFace(600), { slack: 0.05, supports: [besideIt(0, 'c')] });
const [line] = lowPressure.project.runs;

/** Two hoses side by side, clamped at one place: one of 600 kPa, the other of 5000. */
export const CLAMPED_TOGETHER: Story = {
  ...lowPressure,
  project: {
    overrides: [{ rule: 'hose-spacing', value: 1, reason: 'separators between them' }],
    ports: [
      ...lowPressure.project.ports,
      ...lowPressure.project.ports.map((port, i) => ({
        ...port,
        id: `q${i}`,
        name: `Other port ${i}`,
        seatPoint: [port.seatPoint[0], SIDE_BY_SIDE_MM, 0] as [number, number, number],
      })),
    ],
    runs: [
      ...lowPressure.project.runs,
      ...(line === undefined
        ? []
        : [
            {
              ...line,
              id: 'other',
              name: 'Other',
              a: { port: 'q0', end: 'end-0' },
              b: { port: 'q1', end: 'end-0' },
              service: { ...line.service, pressureKpa: 5000 },
              supports: [besideIt(SIDE_BY_SIDE_MM, 'd')],
            },
          ]),
    ],
  },
};

/** cos and sin of 40 degrees, along which a drain falls from port to port. */
const [LEVEL_SHARE, FALL_SHARE] = [0.766044, 0.642788];

/** A drain with too much hose in it, on a bay that stands on a grade: where it lies flattest it rises then. */
export const LEANING = job(
  [
    { seatPoint: [0, 0, 0], axis: [LEVEL_SHARE, 0, -FALL_SHARE], up: [0, 1, 0] },
    { seatPoint: [400 * LEVEL_SHARE, 0, -400 * FALL_SHARE], axis: [-LEVEL_SHARE, 0, FALL_SHARE], up: [0, 1, 0] },
  ],
  {
    slack: 0.1,
    service: { purpose: 'turbo-oil-drain', fluid: 'engine-oil', pressureKpa: 0, temperatureC: 120 },
  },
  {
    bay: {
      oilLevel: [300, 0, -420],
      attitudes: [10, -10].map((x) => ({
        name: `parked on a hill of ${x} degrees`,
        gradeDeg: { x, y: 0 },
        accelerationG: { x: 0, y: 0 },
      })),
    },
  },
);

/** A hose that keeps clear of a post at rest, and is carried towards it by an engine that shifts aside. */
export const CARRIED_NEAR = job(
  faceToFace(640, 'engine'),
  {},
  {
    blocks: [BENCH, { name: 'post', min: [300, 22, -300], max: [340, 60, 300] }],
    bay: {
      bodies: [
        {
          id: 'engine',
          name: 'Engine',
          parts: [],
          motion: motionAbout([640, 0, 0], { shiftMm: { y: [0, 16] } }),
        },
      ],
    },
    clamps: [CLAMP_14],
  },
);

/** The same two ports with a pump at the second: an end of 90 degrees there keeps the hose from the heat, and starves the pump a little. */
export const HOT_SUCTION: Story = {
  ...UNDER_HEAT,
  ends: UNDER_HEAT.ends.filter(({ bendAngleDeg }) => bendAngleDeg !== 45),
  project: {
    ...UNDER_HEAT.project,
    runs: UNDER_HEAT.project.runs.map((run) => ({
      ...run,
      service: { purpose: 'oil-suction', fluid: 'engine-oil', pressureKpa: -10, temperatureC: 100 },
    })),
  },
};

/** The same pump with no hose on the shelf that is wide enough: the widest still runs at 3.7 m/s. */
export const STILL_STARVED: Story = {
  ...STARVED,
  hoses: STARVED.hoses.map((hose) => (hose.id === 'wide' ? { ...hose, insideDiameterMm: 16 } : hose)),
};
