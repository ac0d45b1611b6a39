import { CanvasTexture, RepeatWrapping, SRGBColorSpace } from 'three';
import type { Hose } from '../../../shared/document/parts/schema.ts';

type Cover = Hose['cover'];

interface CoverLook {
  readonly ground: string;
  readonly strands: readonly [string, string];
  readonly roughness: number;
  readonly metalness: number;
}

/** What each cover looks like. Natural colours of the stuff itself, no maker's tracers. */
export const COVER_LOOKS: Record<Cover, CoverLook> = {
  'steel-braid': { ground: '#7d7c76', strands: ['#d9d7cf', '#b3b1a8'], roughness: 0.42, metalness: 0.35 },
  'polyester-braid': { ground: '#1f1d1b', strands: ['#4b4843', '#37342f'], roughness: 0.85, metalness: 0 },
  'aramid-braid': { ground: '#7b6220', strands: ['#d8b85a', '#bd9a3c'], roughness: 0.8, metalness: 0 },
  'textile-braid': { ground: '#2a2620', strands: ['#5a5144', '#453d33'], roughness: 0.95, metalness: 0 },
  rubber: { ground: '#2c2a28', strands: ['#343230', '#2c2a28'], roughness: 0.75, metalness: 0 },
};

/** Mm of hose that one repeat of the texture covers, and how often it repeats around. */
export const COVER_REPEAT = { lengthMm: 7, around: 6 };

const made = new Map<Cover, CanvasTexture>();

/** The cover as a repeating picture: two families of strands, over and under. One per cover, kept for the session. */
export function coverTexture(cover: Cover): CanvasTexture {
  const known = made.get(cover);
  if (known !== undefined) return known;
  const texture = new CanvasTexture(drawCover(COVER_LOOKS[cover]));
  texture.wrapS = texture.wrapT = RepeatWrapping;
  texture.repeat.set(COVER_REPEAT.around, 1);
  texture.colorSpace = SRGBColorSpace;
  texture.anisotropy = 8;
  made.set(cover, texture);
  return texture;
}

function drawCover(look: CoverLook): HTMLCanvasElement {
  const size = 128;
  const canvas = document.createElement('canvas');
  canvas.width = canvas.height = size;
  const pen = canvas.getContext('2d');
  if (pen === null) return canvas;
  pen.fillStyle = look.ground;
  pen.fillRect(0, 0, size, size);
  pen.lineWidth = size * 0.22;
  for (const [lean, colour] of [
    [1, look.strands[1]],
    [-1, look.strands[0]],
  ] as const) {
    pen.strokeStyle = colour;
    for (let k = -2; k <= 2; k++) {
      pen.beginPath();
      pen.moveTo(k * size - (lean * size) / 2 + size / 2, -size / 2 + size / 2);
      pen.lineTo(k * size + (lean * size) / 2 + size / 2, size / 2 + size / 2);
      pen.stroke();
    }
  }
  return canvas;
}
