/** Places that tell the outline of a mesh; of one with more corners, every so many is taken. */
const CORNERS = 10_000;
/** Places that the long edges of triangles add at most. */
const ALONG_EDGES = 8_000;

/**
 * Places of a mesh that tell its outline, x, y, z each: corners of its triangles, of all three in turn where there are
 * too many, and places `spacingMm` apart along edges that are longer than that. Vertices that no triangle uses are left out: a
 * mesh may hold those of parts left out.
 */
export function outlinePoints(positions: Float32Array, indices: Uint32Array, spacingMm: number): Float32Array {
  const least = Math.max(1, Math.ceil(indices.length / CORNERS));
  const step = least > 1 && least % 3 === 0 ? least + 1 : least;
  const places: number[] = [];
  for (let i = 0; i < indices.length; i += step) {
    const at = 3 * (indices[i] as number);
    places.push(positions[at] as number, positions[at + 1] as number, positions[at + 2] as number);
  }
  const most = places.length + 3 * ALONG_EDGES;
  for (let i = 0; i < indices.length && places.length < most; i++) {
    const [from, to] = [3 * (indices[i] as number), 3 * (indices[i % 3 === 2 ? i - 2 : i + 1] as number)];
    const across = [0, 1, 2].map((k) => (positions[to + k] as number) - (positions[from + k] as number));
    const parts = Math.ceil(Math.hypot(...across) / spacingMm);
    for (let part = 1; part < parts; part++)
      for (let k = 0; k < 3; k++) places.push((positions[from + k] as number) + ((across[k] as number) * part) / parts);
  }
  return Float32Array.from(places);
}
