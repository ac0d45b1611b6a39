import { z } from 'zod';
import { lengthOf } from '../../base/vec3.ts';

/** What the fields of a project file are made of. Lengths are mm, points and directions are in the bay frame. */
export const finite = z.number();
export const positive = finite.positive();
export const nonNegative = finite.nonnegative();
export const id = z
  .string()
  .regex(/^[a-z0-9][a-z0-9-]*$/, 'expected lower-case letters, digits and hyphens, starting with a letter or digit');
export const name = z.string().min(1);
export const point = z.tuple([finite, finite, finite]).describe('mm, bay frame');
export const direction = z
  .tuple([finite, finite, finite])
  .refine((v) => lengthOf(v[0], v[1], v[2]) > 1e-6, 'expected a direction, not the zero vector')
  .describe('any length above zero; only its direction counts');
export const relativePath = z
  .string()
  .min(1)
  .regex(
    /^(?!\/)(?!.*(^|\/)\.\.(\/|$))(?!.*\\)(?![a-zA-Z]:).+$/,
    'expected a path below the project file, with forward slashes',
  );
