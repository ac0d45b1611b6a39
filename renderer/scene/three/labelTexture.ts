import { CanvasTexture, LinearFilter, SRGBColorSpace } from 'three';
import type { Severity } from '../../../shared/document/lay/schema.ts';

/** A small picture for a sprite, with its size on the screen in CSS pixels. */
export interface Label {
  readonly texture: CanvasTexture;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Texture pixels a CSS pixel; labels are never scaled, so no smaller copies are kept. */
const SHARPNESS = 2;
const FONT = "'Archivo Variable', system-ui, sans-serif";
const TAG_FONT = `700 13px ${FONT}`;

function label(widthPx: number, heightPx: number, draw: (pen: CanvasRenderingContext2D) => void): Label {
  const canvas = document.createElement('canvas');
  canvas.width = widthPx * SHARPNESS;
  canvas.height = heightPx * SHARPNESS;
  const pen = canvas.getContext('2d');
  if (pen !== null) {
    pen.scale(SHARPNESS, SHARPNESS);
    draw(pen);
  }
  const texture = new CanvasTexture(canvas);
  texture.colorSpace = SRGBColorSpace;
  texture.generateMipmaps = false;
  texture.minFilter = LinearFilter;
  return { texture, widthPx, heightPx };
}

function textWidth(text: string): number {
  const pen = document.createElement('canvas').getContext('2d');
  if (pen === null) return text.length * 7;
  pen.font = TAG_FONT;
  return pen.measureText(text).width;
}

/** A paper tag on a string: a port's or an end's name. */
export function tagLabel(text: string, colours: { paper: string; ink: string }): Label {
  const widthPx = Math.ceil(textWidth(text)) + 30;
  return label(widthPx, 24, (pen) => {
    pen.fillStyle = colours.paper;
    pen.strokeStyle = colours.ink;
    pen.beginPath();
    pen.moveTo(1, 12);
    pen.lineTo(9, 1);
    pen.lineTo(widthPx - 1, 1);
    pen.lineTo(widthPx - 1, 23);
    pen.lineTo(9, 23);
    pen.closePath();
    pen.fill();
    pen.stroke();
    pen.fillStyle = colours.ink;
    pen.beginPath();
    pen.arc(10, 12, 2.2, 0, 2 * Math.PI);
    pen.fill();
    pen.font = TAG_FONT;
    pen.textBaseline = 'middle';
    pen.fillText(text, 18, 12.5);
  });
}

/** A numbered tape flag on a pin; the pin's foot is the lower left corner. The shape says the severity again. */
export function flagLabel(number: number, severity: Severity, colours: { tape: string; ink: string }): Label {
  return label(54, 46, (pen) => {
    pen.strokeStyle = colours.ink;
    pen.lineWidth = 2;
    pen.beginPath();
    pen.moveTo(1, 46);
    pen.lineTo(1, 1);
    pen.stroke();
    pen.fillStyle = colours.tape;
    pen.beginPath();
    pen.moveTo(1, 1);
    pen.lineTo(53, 1);
    pen.lineTo(47, 13);
    pen.lineTo(53, 25);
    pen.lineTo(1, 25);
    pen.closePath();
    pen.fill();
    pen.lineWidth = 1.2;
    pen.stroke();
    pen.fillStyle = colours.ink;
    severityShape(pen, severity, 13, 13, 6.5);
    pen.font = `750 15px ${FONT}`;
    pen.textBaseline = 'middle';
    pen.fillText(String(number), 25, 14);
  });
}

/** Octagon, triangle, ring: the same shapes as on the lists. */
function severityShape(pen: CanvasRenderingContext2D, severity: Severity, x: number, y: number, radius: number): void {
  pen.beginPath();
  if (severity === 'note') {
    pen.lineWidth = 2;
    pen.arc(x, y, radius - 1.5, 0, 2 * Math.PI);
    pen.stroke();
    return;
  }
  const corners = severity === 'stop' ? 8 : 3;
  const start = severity === 'stop' ? Math.PI / 8 : -Math.PI / 2;
  for (let i = 0; i < corners; i++) {
    const angle = start + (i * 2 * Math.PI) / corners;
    pen.lineTo(x + radius * Math.cos(angle), y + radius * Math.sin(angle) + (severity === 'look' ? 1.5 : 0));
  }
  pen.fill();
}
