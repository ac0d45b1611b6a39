/**
 * Euler's elastica in closed form, by elliptic integrals and functions from the arithmetic-geometric mean.
 * Formulas: Abramowitz & Stegun, Handbook of Mathematical Functions (1964), 16.4 (functions), 17.6 (integrals);
 * Love, A Treatise on the Mathematical Theory of Elasticity (4th ed. 1927), art. 263 (inflexional elastica).
 * Slow and obvious on purpose; nothing here is used by the program.
 */

interface Means {
  readonly a: number[];
  readonly c: number[];
}

function means(k: number): Means {
  const a = [1];
  const c = [k];
  let b = Math.sqrt(1 - k * k);
  while (Math.abs(c.at(-1)!) > 1e-17 && a.length < 40) {
    const last = a.at(-1)!;
    a.push((last + b) / 2);
    c.push((last - b) / 2);
    b = Math.sqrt(last * b);
  }
  return { a, c };
}

/** Complete elliptic integral of the first kind, modulus k. */
export function completeK(k: number): number {
  return Math.PI / 2 / means(k).a.at(-1)!;
}

/** Complete elliptic integral of the second kind, modulus k. */
export function completeE(k: number): number {
  const { c } = means(k);
  const sum = c.reduce((total, ci, i) => total + 2 ** (i - 1) * ci * ci, 0);
  return completeK(k) * (1 - sum);
}

/** sn, cn and the incomplete integral E(am u, k). */
export function jacobi(u: number, k: number): { sn: number; cn: number; incompleteE: number } {
  const { a, c } = means(k);
  let phi = 2 ** (a.length - 1) * a.at(-1)! * u;
  let sum = 0;
  for (let i = a.length - 1; i > 0; i--) {
    sum += c[i]! * Math.sin(phi);
    phi = (phi + Math.asin((c[i]! * Math.sin(phi)) / a[i]!)) / 2;
  }
  return { sn: Math.sin(phi), cn: Math.cos(phi), incompleteE: (completeE(k) / completeK(k)) * u + sum };
}

/** A strip of length 1 and stiffness 1, both ends held pointing along +x, `span` apart on the x axis; first mode. */
export interface ClampedElastica {
  readonly k: number;
  /** height of the middle */
  readonly rise: number;
  readonly maxCurvature: number;
  /** thrust against Euler's load of the clamped column, 4 pi^2 EI / L^2 */
  readonly thrustRatio: number;
  readonly energy: number;
  /** the point at arc length s in 0..1, bulging to +y */
  pointAt(s: number): [number, number];
}

export function clampedElastica(span: number): ClampedElastica {
  let low = 0;
  let high = 1 - 1e-12;
  for (let i = 0; i < 200; i++) {
    const k = (low + high) / 2;
    if ((2 * completeE(k)) / completeK(k) - 1 > span) low = k;
    else high = k;
  }
  const k = (low + high) / 2;
  const K = completeK(k);
  const E = completeE(k);
  return {
    k,
    rise: k / K,
    maxCurvature: 8 * k * K,
    thrustRatio: ((2 * K) / Math.PI) ** 2,
    energy: 32 * K * (E - (1 - k * k) * K),
    pointAt(s) {
      const u = 4 * K * s;
      const { cn, incompleteE } = jacobi(u, k);
      return [(2 * incompleteE - u) / (4 * K), (k * (1 - cn)) / (2 * K)];
    },
  };
}
