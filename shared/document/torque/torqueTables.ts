import type { EndMaterial } from '../parts/schema.ts';

/** A published table of torques for nuts on 37 degree flares, in the unit that it is printed in. */
export interface TorqueTable {
  readonly id: string;
  /** how it is told on paper: a number without it says nothing */
  readonly name: string;
  readonly source: string;
  /** metal of the softer side; absent = the table names none */
  readonly metal?: EndMaterial;
  readonly unit: 'in-lb' | 'N.m';
  readonly lubricated: boolean;
  /** by dash size: least and most */
  readonly byDash: Readonly<Record<number, readonly [least: number, most: number]>>;
}

const NAVY = 'NAVEDTRA 14018 Table 5-9, p. 5-26';

export const TORQUE_TABLES: readonly TorqueTable[] = [
  {
    id: 'army-hose-nut',
    name: 'Army, flared hose coupling nut',
    source: 'US Army TM 55-1520-240-23-1, para 1-13, column E; threads lubricated',
    unit: 'in-lb',
    lubricated: true,
    byDash: {
      4: [100, 120],
      6: [210, 250],
      8: [340, 420],
      10: [400, 480],
      12: [725, 850],
      16: [900, 1150],
      20: [950, 1150],
    },
  },
  {
    id: 'navy-steel',
    name: 'Navy, swivel nut on hose, steel',
    source: NAVY,
    metal: 'steel',
    unit: 'in-lb',
    lubricated: false,
    byDash: {
      2: [75, 85],
      3: [95, 105],
      4: [135, 145],
      5: [170, 190],
      6: [215, 245],
      8: [430, 470],
      10: [620, 680],
      12: [855, 945],
      16: [1140, 1260],
      20: [1520, 1680],
      24: [1900, 2100],
      32: [2660, 2940],
    },
  },
  {
    id: 'navy-aluminium',
    name: 'Navy, swivel nut on hose, aluminium',
    source: NAVY,
    metal: 'aluminium',
    unit: 'in-lb',
    lubricated: false,
    byDash: {
      2: [20, 30],
      3: [25, 35],
      4: [50, 65],
      5: [70, 90],
      6: [110, 130],
      8: [230, 260],
      10: [330, 360],
      12: [460, 500],
      16: [640, 700],
      20: [800, 900],
      24: [800, 900],
      32: [1800, 2000],
    },
  },
  {
    id: 'steel-37',
    name: 'Machinery, steel flare nut',
    source:
      'machinery operator manual Table 8.10, flare-type tube fittings (easymanua.ls/macdon/m205/manual?p=474); lubricated steel',
    metal: 'steel',
    unit: 'N.m',
    lubricated: true,
    byDash: {
      2: [4, 5],
      3: [7, 8],
      4: [18, 19],
      5: [19, 21],
      6: [30, 33],
      8: [57, 63],
      10: [81, 89],
      12: [113, 124],
      14: [136, 149],
      16: [160, 176],
      20: [228, 250],
      24: [264, 291],
      32: [359, 395],
    },
  },
];

/** Flats of a nut turned on from where it seats, for a hose end on a 37 degree flare; a flat is a sixth of a turn. */
export const FLATS: {
  readonly name: string;
  readonly source: string;
  readonly byDash: Readonly<Record<number, readonly [least: number, most: number]>>;
} = {
  name: 'Army, flats from seat contact',
  source: 'US Army TM 9-2320-364-20-4 Table 2-67, 37 degree flared hose fitting',
  byDash: {
    4: [1.5, 1.75],
    5: [1, 1.5],
    6: [1, 1.5],
    8: [1.25, 1.75],
    10: [1.25, 1.75],
    12: [1, 1.5],
    16: [0.75, 1],
    20: [0.5, 0.75],
    24: [0.5, 0.75],
    32: [0.75, 0.75],
  },
};
