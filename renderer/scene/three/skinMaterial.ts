import { Color, DoubleSide, MeshLambertMaterial, MeshStandardMaterial } from 'three';
import type { SkinKind } from '../../../shared/document/project/schema.ts';

/**
 * How much of the mark's colour lies at a place of the bay (`p`, mm), 0 to 1, for each kind of skin. The marks stand
 * still on the part as a pencil hatch would: hot is hatched, composite is woven, sharp edges are dashed, moving is waved.
 */
const MARKS: Record<SkinKind, string> = {
  plain: '0.0',
  hot: 'stroke(p.x + p.y + p.z, 14.0, 2.2)',
  composite: 'max(stroke(p.x + p.y + p.z, 12.0, 1.6), stroke(p.x - p.y + p.z * 0.3, 12.0, 1.6))',
  'sharp-edge': 'stroke(p.x + p.y + p.z, 10.0, 2.4) * step(0.5, fract((p.x - p.y + p.z) / 16.0))',
  wiring: 'max(stroke(p.z + p.x * 0.2, 9.0, 1.6), stroke(p.x + p.y, 27.0, 1.6))',
  moving: 'stroke(p.x + p.y + p.z + 4.0 * sin((p.x - p.y + p.z) / 5.0), 16.0, 2.0)',
};

/** A line every `period` mm, `width` mm wide, softened to a pixel and fading to its mean tone where lines run together. */
const STROKE = `
varying vec3 vPlaceMm;
float stroke(float along, float period, float width) {
  float soft = max(fwidth(along), 1e-4);
  float away = abs(fract(along / period) - 0.5) * period;
  float line = 1.0 - smoothstep(width * 0.5 - soft * 0.5, width * 0.5 + soft * 0.5, away);
  return mix(line, width / period, smoothstep(0.12, 0.32, soft / period));
}`;

/** Material of a skin: dull, only composite has a shine. Both sides are drawn: scans are not consistently wound. */
export function skinMaterial(
  kind: SkinKind,
  colours: { base: string; mark: string },
  flat: boolean,
): MeshLambertMaterial | MeshStandardMaterial {
  const look = {
    color: colours.base,
    side: DoubleSide,
    flatShading: flat,
    polygonOffset: true,
    polygonOffsetFactor: 1,
    polygonOffsetUnits: 1,
  };
  const material =
    kind === 'composite' ? new MeshStandardMaterial({ ...look, roughness: 0.55 }) : new MeshLambertMaterial(look);
  const mark = { value: new Color(colours.mark) };
  material.onBeforeCompile = (shader) => {
    shader.uniforms['markColour'] = mark;
    shader.vertexShader = shader.vertexShader
      .replace('#include <common>', '#include <common>\nvarying vec3 vPlaceMm;')
      .replace('#include <begin_vertex>', '#include <begin_vertex>\nvPlaceMm = position;');
    shader.fragmentShader = shader.fragmentShader
      .replace('#include <common>', `#include <common>\nuniform vec3 markColour;\n${STROKE}`)
      .replace(
        '#include <color_fragment>',
        `#include <color_fragment>\nvec3 p = vPlaceMm;\ndiffuseColor.rgb = mix(diffuseColor.rgb, markColour, ${MARKS[kind]});`,
      );
  };
  material.customProgramCacheKey = () => `skin-${kind}-${flat}`;
  return material;
}
