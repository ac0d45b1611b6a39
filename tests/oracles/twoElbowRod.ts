/**
 * Points along the axis of the two-elbow rod, whose length and clock are known in closed form: straight 50 along +X, a
 * 90 degree bend of radius 100 to +Y, straight 100, a 90 degree bend of radius 100 to +Z, straight 50. Outlet A +Z and
 * outlet B +X make a clock of 270 degrees.
 */
export const TWO_ELBOW_LENGTH_MM = 200 + 100 * Math.PI;

type Point = readonly [number, number, number];

export function twoElbowPoint(arcLengthMm: number): Point {
  const quarter = 50 * Math.PI;
  const s = arcLengthMm;
  if (s < 50) return [s, 0, 0];
  if (s < 50 + quarter) {
    const turned = (s - 50) / 100;
    return [50 + 100 * Math.sin(turned), 100 - 100 * Math.cos(turned), 0];
  }
  if (s < 150 + quarter) return [150, 100 + s - 50 - quarter, 0];
  if (s < 150 + 2 * quarter) {
    const turned = (s - 150 - quarter) / 100;
    return [150, 200 + 100 * Math.sin(turned), 100 - 100 * Math.cos(turned)];
  }
  return [150, 300, 100 + s - 150 - 2 * quarter];
}

/** `count` points at equal distances along it. */
export function twoElbowPoints(count: number): Point[] {
  return Array.from({ length: count }, (_, i) => twoElbowPoint((TWO_ELBOW_LENGTH_MM * i) / (count - 1)));
}

/** Points off their places by a normal scatter of so many mm in each coordinate. random: 0 to 1. */
export function scattered(points: readonly Point[], scatterMm: number, random: () => number): Point[] {
  const off = (): number => scatterMm * Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  return points.map((p) => [p[0] + off(), p[1] + off(), p[2] + off()]);
}
