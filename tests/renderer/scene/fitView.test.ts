import { PerspectiveCamera, Vector3 } from 'three';
import { expect, it } from 'vitest';
import { type Cover, fitClear } from '../../../renderer/scene/three/fitClear.ts';
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
    const margins = { left: 0.04, right: 0.1, top: 0.05, bottom: 0.15 };
    const look = new Vector3(0.62, 1, 0.74).normalize();
    const subject = { points, look, centre: new Vector3(40, 40, 40), sizeMm: Math.hypot(...size) / 2 };
    const { eye, target } = fitView(camera, subject, margins);
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
    const slackX = Math.min(1 - 2 * margins.right - maxX, minX + 1 - 2 * margins.left);
    const slackY = Math.min(1 - 2 * margins.top - maxY, minY + 1 - 2 * margins.bottom);
    expect(Math.min(slackX, slackY)).toBeGreaterThan(-0.01);
    expect(Math.min(slackX, slackY)).toBeLessThan(0.01);
  },
);

const TOOLS: Cover = { left: 0.2, right: 1, top: 0.85, bottom: 1.1 };
const LEGEND: Cover = { left: 0.02, right: 0.2, top: 0.5, bottom: 0.98 };
const PULL: Cover = { left: 0.86, right: 0.98, top: 0, bottom: 0.13 };

it.each([
  ['a wide bay', [1800, 1100, 400]],
  ['a tall one', [300, 300, 1200]],
  ['a cube', [900, 900, 900]],
] as [string, [number, number, number]][])('nothing of %s is under what lies over the picture', (_, size) => {
  const random = seededRandom(5);
  const points = Float32Array.from({ length: 6000 }, (_point, i) => (random() - 0.5) * size[i % 3]!);
  const camera = new PerspectiveCamera(32, 1.7, 1, 1e5);
  const margins = { left: 0.04, right: 0.04, top: 0.05, bottom: 0.04 };
  const look = new Vector3(0.62, 1, 0.74).normalize();
  const subject = { points, look, centre: new Vector3(), sizeMm: Math.hypot(...size) / 2 };
  const covers = [TOOLS, LEGEND, PULL];
  const { eye, target } = fitClear(camera, subject, margins, covers);
  camera.up.set(0, 0, 1);
  camera.position.copy(eye);
  camera.lookAt(target);
  camera.updateMatrixWorld();
  camera.updateProjectionMatrix();
  const under = (): number => {
    let count = 0;
    for (let i = 0; i < points.length; i += 3) {
      const seen = new Vector3().fromArray(points, i).project(camera);
      const [x, y] = [(seen.x + 1) / 2, (1 - seen.y) / 2];
      if (covers.some((c) => x > c.left && x < c.right && y > c.top && y < c.bottom)) count++;
    }
    return count;
  };
  expect(under()).toBe(0);
  // Not by standing far off: half as far away, and something would be under them.
  camera.position.copy(target).lerp(eye, 0.5);
  camera.updateMatrixWorld();
  expect(under()).toBeGreaterThan(0);
});

it('a cover that nothing is under changes nothing', () => {
  const points = Float32Array.from([0, 0, 0, 100, 0, 0, 0, 100, 0, 0, 0, 100]);
  const camera = new PerspectiveCamera(32, 3, 1, 1e5);
  const margins = { left: 0.04, right: 0.04, top: 0.05, bottom: 0.04 };
  const look = new Vector3(0.62, 1, 0.74).normalize();
  const subject = { points, look, centre: new Vector3(50, 50, 50), sizeMm: 87 };
  expect(fitClear(camera, subject, margins, [LEGEND])).toEqual(fitView(camera, subject, margins));
});
