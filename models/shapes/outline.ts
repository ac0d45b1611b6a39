/** Flat outlines, counter-clockwise, mm. */
export type Outline = readonly (readonly [number, number])[];

/** A rectangle with rounded corners about (0, 0). */
export function roundedRectangle(width: number, height: number, corner: number, steps = 5): Outline {
  const points: [number, number][] = [];
  const cu = width / 2 - corner;
  const cv = height / 2 - corner;
  const quarters: readonly (readonly [number, number, number])[] = [
    [cu, cv, 0],
    [-cu, cv, 90],
    [-cu, -cv, 180],
    [cu, -cv, 270],
  ];
  for (const [u, v, from] of quarters) {
    for (let k = 0; k <= steps; k++) {
      const a = ((from + (90 * k) / steps) * Math.PI) / 180;
      points.push([u + corner * Math.cos(a), v + corner * Math.sin(a)]);
    }
  }
  return points;
}

export function circleOutline(radius: number, count = 32, at: readonly [number, number] = [0, 0]): Outline {
  return Array.from({ length: count }, (_, k) => {
    const a = (2 * Math.PI * k) / count;
    return [at[0] + radius * Math.cos(a), at[1] + radius * Math.sin(a)] as const;
  });
}

/** A hexagon by its distance across flats, `perSide` points on each side. */
export function hexagon(acrossFlats: number, perSide = 1): Outline {
  const r = acrossFlats / Math.sqrt(3);
  const points: [number, number][] = [];
  for (let side = 0; side < 6; side++) {
    const a = (side * Math.PI) / 3;
    const b = ((side + 1) * Math.PI) / 3;
    for (let k = 0; k < perSide; k++) {
      const t = k / perSide;
      points.push([r * (Math.cos(a) * (1 - t) + Math.cos(b) * t), r * (Math.sin(a) * (1 - t) + Math.sin(b) * t)]);
    }
  }
  return points;
}

/** Every point moved inward by `by` along the mean normal of its two sides; fine for small bevels. */
export function inset(outline: Outline, by: number): Outline {
  const n = outline.length;
  return outline.map(([u, v], i) => {
    const [pu, pv] = outline[(i + n - 1) % n] as readonly [number, number];
    const [nu, nv] = outline[(i + 1) % n] as readonly [number, number];
    const a = normal(pu, pv, u, v);
    const b = normal(u, v, nu, nv);
    const share = by / Math.max(0.3, 1 + a[0] * b[0] + a[1] * b[1]);
    return [u - (a[0] + b[0]) * share, v - (a[1] + b[1]) * share] as const;
  });
}

function normal(au: number, av: number, bu: number, bv: number): readonly [number, number] {
  const l = Math.hypot(bu - au, bv - av);
  return [(bv - av) / l, -(bu - au) / l];
}
