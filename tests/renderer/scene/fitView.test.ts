import { PerspectiveCamera, Vector3 } from 'three';
import { expect, it } from 'vitest';
import { fitView } from '../../../renderer/scene/three/fitView.ts';
import { seededRandom } from '../../../shared/base/random.ts';

it.each([
  [1.6, [1800, 1100, 800]],
  [0.7, [300, 300, 1200]],
  [2.4, [500, 1500, 90]],
] as [number, [number, number, number]][])(
  'fills a picture of aspect %d to its margins, and no further',
  (aspect, size) => {
    const random = seededRandom(3);
    const points = Float32Array.from({ length: 3000 }, (_, i) => (random() - 0.5) * size[i % 3]! + 40);
    const camera = new PerspectiveCamera(40, aspect, 1, 1e5);
    const margins = { side: 0.04, top: 0.05, bottom: 0.15 };
    const look = new Vector3(0.62, 1, 0.74).normalize();
    const { eye, target } = fitView(camera, points, look, new Vector3(40, 40, 40), Math.hypot(...size) / 2, margins);
    camera.up.set(0, 0, 1);
    camera.position.copy(eye);
    camera.lookAt(target);
    camera.updateMatrixWorld();
    camera.updateProjectionMatrix();
    let [minX, maxX, minY, maxY] = [1, -1, 1, -1];
    for (let i = 0; i < points.length; i += 3) {
      const seen = new Vector3().fromArray(points, i).project(camera);
      [minX, maxX] = [Math.min(minX, seen.x), Math.max(maxX, seen.x)];
      [minY, maxY] = [Math.min(minY, seen.y), Math.max(maxY, seen.y)];
    }
    // In a picture from -1 to 1, a margin of m of its whole leaves 2 m free.
    const slackX = Math.min(1 - 2 * margins.side - maxX, minX + 1 - 2 * margins.side);
    const slackY = Math.min(1 - 2 * margins.top - maxY, minY + 1 - 2 * margins.bottom);
    expect(Math.min(slackX, slackY)).toBeGreaterThan(-0.01);
    expect(Math.min(slackX, slackY)).toBeLessThan(0.01);
  },
);
