/** A binary heap of numbered nodes, least key first; equal keys come out in the order of their numbers. */
export class NodeQueue {
  private readonly keys: number[] = [];
  private readonly nodes: number[] = [];

  get size(): number {
    return this.nodes.length;
  }

  /** Key of the node that comes next; infinite when there is none. */
  get leastKey(): number {
    return this.keys[0] ?? Number.POSITIVE_INFINITY;
  }

  push(key: number, node: number): void {
    const { keys, nodes } = this;
    let at = nodes.length;
    keys.push(key);
    nodes.push(node);
    while (at > 0) {
      const up = (at - 1) >> 1;
      if (!before(key, node, keys[up] as number, nodes[up] as number)) break;
      keys[at] = keys[up] as number;
      nodes[at] = nodes[up] as number;
      at = up;
    }
    keys[at] = key;
    nodes[at] = node;
  }

  /** Takes out the node with the least key; -1 when there is none. */
  pop(): number {
    const { keys, nodes } = this;
    const top = nodes[0];
    if (top === undefined) return -1;
    const key = keys.pop() as number;
    const node = nodes.pop() as number;
    if (nodes.length > 0) this.sink(key, node);
    return top;
  }

  private sink(key: number, node: number): void {
    const { keys, nodes } = this;
    const size = nodes.length;
    let at = 0;
    for (let child = 1; child < size; child = 2 * at + 1) {
      const other = child + 1;
      if (
        other < size &&
        before(keys[other] as number, nodes[other] as number, keys[child] as number, nodes[child] as number)
      )
        child = other;
      if (!before(keys[child] as number, nodes[child] as number, key, node)) break;
      keys[at] = keys[child] as number;
      nodes[at] = nodes[child] as number;
      at = child;
    }
    keys[at] = key;
    nodes[at] = node;
  }
}

function before(keyA: number, nodeA: number, keyB: number, nodeB: number): boolean {
  return keyA < keyB || (keyA === keyB && nodeA < nodeB);
}
