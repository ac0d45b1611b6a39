import { inchesToMm } from '../../../base/units.ts';
import type { FlareSize } from './schema.ts';

const THREAD_SOURCE = 'MacDon M205 operator manual, table 8.10 "Flare-Type Hydraulic Tube Fittings"; SAE J514 series';
const HEX_SOURCE =
  'US Army TM 55-1520-240-23-1, para 1-13 "Standard Torque Limits in Inch-Pounds for Hose and Tube Coupling Nuts"';

/** 37 degree flare: dash, tube outside diameter, thread, and the nut's hex where the table of nuts has the size. */
export const FLARE_SIZES: readonly FlareSize[] = (
  [
    [2, '1/8', '5/16-24'],
    [3, '3/16', '3/8-24'],
    [4, '1/4', '7/16-20', '9/16'],
    [5, '5/16', '1/2-20'],
    [6, '3/8', '9/16-18', '11/16'],
    [8, '1/2', '3/4-16', '7/8'],
    [10, '5/8', '7/8-14', '1'],
    [12, '3/4', '1 1/16-12', '1 1/4'],
    [14, '7/8', '1 3/16-12'],
    [16, '1', '1 5/16-12', '1 1/2'],
    [20, '1 1/4', '1 5/8-12', '2'],
    [24, '1 1/2', '1 7/8-12'],
    [32, '2', '2 1/2-12'],
    [40, '2 1/2', '3-12'],
  ] as const
).map(([dash, tubeOutsideIn, thread, nutHexIn]) => ({
  dash,
  tubeOutsideIn,
  thread,
  threadRead: 'seen',
  threadSource: THREAD_SOURCE,
  ...(nutHexIn === undefined
    ? {}
    : { nutHexIn, nutHexMm: hexMm(nutHexIn), nutHexRead: 'seen' as const, nutHexSource: HEX_SOURCE }),
}));

function hexMm(text: string): number {
  const inches = text.split(' ').reduce((sum, word) => {
    const [over = '', under = '1'] = word.split('/');
    return sum + Number(over) / Number(under);
  }, 0);
  return Math.round(inchesToMm(inches) * 1000) / 1000;
}
