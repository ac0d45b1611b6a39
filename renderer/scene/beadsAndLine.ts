import {
  BufferAttribute,
  BufferGeometry,
  Group,
  Line,
  LineBasicMaterial,
  Mesh,
  MeshBasicMaterial,
  SphereGeometry,
} from 'three';

interface Look {
  readonly color: string;
  /** mm */
  readonly beadMm: number;
  /** of the line; the beads come right after it */
  readonly renderOrder: number;
}

/** Places of the bay as beads, and the line from one to the next, seen through everything. */
export function beadsAndLine({ color, beadMm, renderOrder }: Look) {
  const group = new Group();
  const bead = new SphereGeometry(beadMm, 16, 12);
  const fill = new MeshBasicMaterial({ color, depthTest: false, transparent: true });
  const ink = new LineBasicMaterial({ color, depthTest: false, transparent: true });
  const line = new Line(new BufferGeometry(), ink);
  line.renderOrder = renderOrder;
  line.frustumCulled = false;
  return {
    group,
    show: (points: readonly (readonly [number, number, number])[]): void => {
      group.clear();
      line.geometry.dispose();
      line.geometry = new BufferGeometry();
      line.geometry.setAttribute('position', new BufferAttribute(new Float32Array(points.flat()), 3));
      if (points.length > 1) group.add(line);
      for (const at of points) {
        const mesh = new Mesh(bead, fill);
        mesh.position.set(...at);
        mesh.renderOrder = renderOrder + 1;
        group.add(mesh);
      }
    },
    dispose: (): void => {
      line.geometry.dispose();
      bead.dispose();
      fill.dispose();
      ink.dispose();
    },
  };
}
