import { CALIPER_AGREES_MM, END_AGREES_MM, RIM_ANGLE_AGREES_DEG } from '../../../base/tolerances.ts';
import { degreesToRadians, radiansToDegrees } from '../../../base/units.ts';
import { lengthOf } from '../../../base/vec3.ts';
import { type MeasureKind, READINGS } from './readings.ts';

/** Readings by key, mm (the angle in degrees); what was not read is not there. */
export type Readings = Readonly<Record<string, number>>;

/** One thing known two ways. */
export interface MeasureCheck {
  readonly what: 'C' | 'drop' | 'bend' | 'rim' | 'legs' | 'sense';
  readonly unit: 'mm' | 'deg';
  /** where the two figures come from, in words */
  readonly from: readonly [string, string];
  readonly figures: readonly [number, number];
  readonly agrees: boolean;
  /** keys of the readings that go into it */
  readonly readings: readonly string[];
}

/** What an end's readings come to. */
export interface MeasuredEnd {
  /** keys of needed readings that are not there yet */
  readonly missing: readonly string[];
  /** what the end's row gets; absent while readings are missing */
  readonly end?: MeasuredRow;
  readonly checks: readonly MeasureCheck[];
  /** keys of the readings to take again, those first that alone explain every disagreement */
  readonly again: readonly string[];
}

export interface MeasuredRow {
  readonly form?: 'banjo' | 'flange';
  readonly bendAngleDeg: number;
  readonly cutOffMm: number;
  readonly dropMm: number;
  readonly seatToBendMm: number;
  readonly bendToShoulderMm: number;
  readonly shoulderToMouthMm?: number;
}

interface Worked {
  readonly end: MeasuredRow;
  readonly checks: readonly MeasureCheck[];
}

/**
 * C, drop and lengths of an end from what a caliper and a square read off it (`READINGS` says each reading), and whether
 * readings taken two ways hold together: C and lengths within 1 mm, rims and gaps within 0.6 mm, the bend within 3 degrees.
 * An end that was not read the second way has fewer checks, not fewer figures. Plane geometry, exact for exact readings:
 * an elbow's rim is a straight edge square to the port's axis, a half turn's bend is round, a banjo's neck is square to the
 * bolt.
 */
export function measureEnd(kind: MeasureKind, readings: Readings): MeasuredEnd {
  const missing = missingReadings(kind, readings);
  if (missing.length > 0) return { missing, checks: [], again: [] };
  const { end, checks } = WORK[kind](readings);
  return { missing, end, checks, again: readingsToTakeAgain(checks) };
}

/** A straight end may be measured assembled instead: seat to mouth and insertion stand for the two it needs. */
function missingReadings(kind: MeasureKind, readings: Readings): string[] {
  if (kind === 'straight' && 'seatToMouth' in readings && 'insertion' in readings) return [];
  return READINGS[kind].filter(({ key, need }) => need === 'needed' && !(key in readings)).map(({ key }) => key);
}

const WORK: Readonly<Record<MeasureKind, (readings: Readings) => Worked>> = {
  straight: measureStraight,
  elbow: measureElbow,
  'half-turn': measureHalfTurn,
  banjo: measureBanjo,
  flange: measureFlange,
};

const read = (readings: Readings, key: string): number => readings[key] ?? Number.NaN;
const has = (readings: Readings, ...keys: string[]): boolean => keys.every((key) => key in readings);

/** A check that is made only where its readings are there. */
function check(
  readings: Readings,
  what: MeasureCheck['what'],
  from: readonly [string, string],
  figures: readonly [number, number],
  keys: readonly string[],
): MeasureCheck[] {
  if (!has(readings, ...keys)) return [];
  const agrees = Math.abs(figures[0] - figures[1]) <= WITHIN[what];
  return [{ what, unit: what === 'bend' ? 'deg' : 'mm', from, figures, agrees, readings: keys }];
}

const WITHIN: Readonly<Record<MeasureCheck['what'], number>> = {
  C: END_AGREES_MM,
  drop: END_AGREES_MM,
  legs: END_AGREES_MM,
  bend: RIM_ANGLE_AGREES_DEG,
  rim: CALIPER_AGREES_MM,
  sense: 0,
};

/** A figure that cannot be below 0, such as a drop; said only when it is. */
function notBelowZero(figureMm: number, name: string, keys: readonly string[]): MeasureCheck[] {
  if (figureMm >= 0) return [];
  return [
    { what: 'sense', unit: 'mm', from: [name, 'at least'], figures: [figureMm, 0], agrees: false, readings: keys },
  ];
}

function measureStraight(r: Readings): Worked {
  const loose = read(r, 'seatToTip') - read(r, 'tailLength');
  const assembled = read(r, 'seatToMouth') - read(r, 'insertion');
  const isLoose = has(r, 'seatToTip', 'tailLength');
  const cutOffMm = isLoose ? loose : assembled;
  const keys = isLoose ? ['seatToTip', 'tailLength'] : ['seatToMouth', 'insertion'];
  return {
    end: {
      bendAngleDeg: 0,
      cutOffMm,
      dropMm: 0,
      seatToBendMm: 0,
      bendToShoulderMm: cutOffMm,
      ...(has(r, 'insertion') ? { shoulderToMouthMm: read(r, 'insertion') } : {}),
    },
    checks: [
      ...check(
        r,
        'C',
        ['A less T', 'M less I'],
        [loose, assembled],
        ['seatToTip', 'tailLength', 'seatToMouth', 'insertion'],
      ),
      ...notBelowZero(cutOffMm, isLoose ? 'A less T' : 'M less I', keys),
    ],
  };
}

function measureElbow(r: Readings): Worked {
  const bendAngleDeg = read(r, 'soldAngle');
  const bendRad = degreesToRadians(bendAngleDeg);
  const rimAlong = read(r, 'tipToOutside') - read(r, 'tipToInside');
  const rimUp = read(r, 'heightInside') - read(r, 'heightOutside');
  const cutOffMm = (read(r, 'tipToInside') + read(r, 'tipToOutside')) / 2 - read(r, 'tailLength');
  const dropMm = (read(r, 'heightInside') + read(r, 'heightOutside')) / 2 - read(r, 'tailDiameter') / 2;
  const seatToBendMm = dropMm / Math.sin(bendRad);
  const bendToShoulderMm = cutOffMm - seatToBendMm * Math.cos(bendRad);
  const along = ['tipToInside', 'tipToOutside'];
  const up = ['heightInside', 'heightOutside'];
  const rim = [...along, ...up];
  const dropKeys = [...up, 'tailDiameter'];
  const legDrop = read(r, 'seatLeg') * Math.sin(bendRad);
  const legC = read(r, 'seatLeg') * Math.cos(bendRad) + read(r, 'hoseLeg');
  return {
    end: { bendAngleDeg, cutOffMm, dropMm, seatToBendMm, bendToShoulderMm },
    checks: [
      ...check(
        r,
        'bend',
        ['the rim, from Ai, Ao, Hi and Ho', 'as sold'],
        [radiansToDegrees(Math.atan2(rimAlong, rimUp)), bendAngleDeg],
        [...rim, 'soldAngle'],
      ),
      ...check(
        r,
        'rim',
        ['Ai, Ao, Hi and Ho', 'W'],
        [lengthOf(rimAlong, rimUp), read(r, 'rimDiameter')],
        [...rim, 'rimDiameter'],
      ),
      ...check(r, 'drop', ['Hi, Ho and d', 'S and the bend'], [dropMm, legDrop], [...dropKeys, 'seatLeg', 'soldAngle']),
      ...check(
        r,
        'C',
        ['Ai, Ao and T', 'S, B and the bend'],
        [cutOffMm, legC],
        [...along, 'tailLength', 'seatLeg', 'hoseLeg', 'soldAngle'],
      ),
      ...notBelowZero(dropMm, 'drop, from Hi, Ho and d', dropKeys),
    ],
  };
}

function measureHalfTurn(r: Readings): Worked {
  const [tail, leg] = [read(r, 'tailDiameter'), read(r, 'legDiameter')];
  const dropMm = read(r, 'overLegs') - (tail + leg) / 2;
  // From the outside of the crown to where the bend begins: the radius of its middle line and half its tube.
  const crownMm = dropMm / 2 + leg / 2;
  const seatToBendMm = read(r, 'crownToSeat') - crownMm;
  const bendToShoulderMm = read(r, 'crownToTip') - read(r, 'tailLength') - crownMm;
  return {
    end: {
      bendAngleDeg: 180,
      cutOffMm: bendToShoulderMm - seatToBendMm,
      dropMm,
      seatToBendMm,
      bendToShoulderMm,
    },
    checks: [
      ...check(
        r,
        'drop',
        ['O less half of d and D', 'G and half of d and D'],
        [dropMm, read(r, 'gap') + (tail + leg) / 2],
        ['overLegs', 'tailDiameter', 'legDiameter', 'gap'],
      ),
      ...check(
        r,
        'legs',
        ['Kt less Ks', 'E'],
        [read(r, 'crownToTip') - read(r, 'crownToSeat'), read(r, 'seatToTip')],
        ['crownToTip', 'crownToSeat', 'seatToTip'],
      ),
      ...notBelowZero(seatToBendMm, 'seat to bend, from Ks and O', ['crownToSeat', 'overLegs', 'legDiameter']),
    ],
  };
}

function measureBanjo(r: Readings): Worked {
  const cutOffMm = read(r, 'farEdgeToTip') - read(r, 'eyeDiameter') / 2 - read(r, 'tailLength');
  const byHole = read(r, 'holeToTip') + read(r, 'holeDiameter') / 2 - read(r, 'tailLength');
  const dropMm = read(r, 'eyeThickness') / 2;
  const byTail = read(r, 'tailTop') - read(r, 'tailDiameter') / 2;
  return {
    end: { form: 'banjo', bendAngleDeg: 90, cutOffMm, dropMm, seatToBendMm: dropMm, bendToShoulderMm: cutOffMm },
    checks: [
      ...check(
        r,
        'C',
        ['A, E and T', 'N, h and T'],
        [cutOffMm, byHole],
        ['farEdgeToTip', 'eyeDiameter', 'holeToTip', 'holeDiameter'],
      ),
      ...check(
        r,
        'drop',
        ['half of t', 'Z less half of d'],
        [dropMm, byTail],
        ['eyeThickness', 'tailTop', 'tailDiameter'],
      ),
      ...notBelowZero(cutOffMm, 'C, from A, E and T', ['farEdgeToTip', 'eyeDiameter', 'tailLength']),
    ],
  };
}

function measureFlange(r: Readings): Worked {
  const cutOffMm = read(r, 'farEdgeToTip') - read(r, 'flangeAcross') / 2 - read(r, 'tailLength');
  const dropMm = read(r, 'tailTop') - read(r, 'tailDiameter') / 2;
  // A tail that rises away from the plate was bent by less than a quarter turn.
  const riseRad = Math.atan2(read(r, 'tailTop') - read(r, 'tailTopInner'), read(r, 'betweenTops'));
  return {
    end: { form: 'flange', bendAngleDeg: 90, cutOffMm, dropMm, seatToBendMm: dropMm, bendToShoulderMm: cutOffMm },
    checks: [
      ...check(
        r,
        'bend',
        ['Z, Y and L', 'a square elbow'],
        [90 - radiansToDegrees(riseRad), 90],
        ['tailTop', 'tailTopInner', 'betweenTops'],
      ),
      ...notBelowZero(dropMm, 'drop, from Z and d', ['tailTop', 'tailDiameter']),
      ...notBelowZero(cutOffMm, 'C, from A, F and T', ['farEdgeToTip', 'flangeAcross', 'tailLength']),
    ],
  };
}

/**
 * Which readings to take again: if one slip is behind it all, it went into every check that failed and into none that
 * held. Where no reading is such, those that went into failed checks and into none that held; else all of failed ones.
 */
function readingsToTakeAgain(checks: readonly MeasureCheck[]): string[] {
  const failed = checks.filter(({ agrees }) => !agrees);
  const held = new Set(checks.filter(({ agrees }) => agrees).flatMap(({ readings }) => readings));
  const all = [...new Set(failed.flatMap(({ readings }) => readings))];
  const alone = all.filter((key) => !held.has(key) && failed.every(({ readings }) => readings.includes(key)));
  if (alone.length > 0) return alone;
  const unheld = all.filter((key) => !held.has(key));
  return unheld.length > 0 ? unheld : all;
}
