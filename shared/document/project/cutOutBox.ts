import { scale as scaled, sub, type Vec3 } from '../../base/vec3.ts';
import { type SquareUp, unlevelled } from '../../geometry/meshImport/squareUp.ts';
import type { CutOut } from './baySchema.ts';

/**
 * A box of the bay with its sides along the bay's axes, low and high corner in mm, as the meshes lie before they are scaled and levelled: so a
 * piece that was cut out stays the same piece when the bay is levelled or scaled anew. Rounded to 0.001 mm.
 */
export function cutOutBox({ scale = 1, level }: SquareUp, low: Vec3, high: Vec3): Pick<CutOut, 'corner' | 'edges'> {
  const lying = (v: Vec3): [number, number, number] => {
    const [x, y, z] = scaled(unlevelled(v, level), 1 / scale);
    return [rounded(x), rounded(y), rounded(z)];
  };
  const [wide, deep, tall] = sub(high, low);
  return { corner: lying(low), edges: [lying([wide, 0, 0]), lying([0, deep, 0]), lying([0, 0, tall])] };
}

function rounded(mm: number): number {
  return Math.round(mm * 1000) / 1000;
}
