import type { Camera, Scene, WebGLRenderer } from 'three';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { isAtRest, nearestFirst, patientRenderer } from '../../../renderer/scene/three/patientRenderer.ts';

/** A graphics card that draws as long as the test says, and tells what was asked of it. */
const card = vi.hoisted(() => {
  const state = {
    drawing: false,
    lost: false,
    compiling: false,
    log: [] as string[],
    heard: new Map<string, () => void>(),
  };
  const gl = {
    SYNC_STATUS: 1,
    SIGNALED: 2,
    fenceSync: () => {
      state.drawing = true;
      return {};
    },
    getSyncParameter: () => (state.drawing ? 0 : 2),
    deleteSync: () => undefined,
    flush: () => undefined,
    isContextLost: () => state.lost,
  };
  class FakeRenderer {
    domElement = {
      style: {},
      addEventListener: (name: string, act: () => void) => {
        const before = state.heard.get(name);
        state.heard.set(name, () => {
          before?.();
          act();
        });
      },
    };
    program = { usedTimes: 1, isReady: () => !state.compiling };
    info = { autoReset: true, reset: () => undefined, programs: [this.program] };
    target: unknown = null;
    getContext = () => gl;
    setOpaqueSort = () => undefined;
    compile = () => {
      state.log.push('compile');
      this.made = true;
    };
    made = false;
    properties = { get: () => (this.made ? { currentProgram: this.program } : {}) };
    setRenderTarget = (target: unknown) => {
      this.target = target;
    };
    getDrawingBufferSize = (size: { set(x: number, y: number): void }) => size.set(10, 10);
    setDrawingBufferSize = (width: number, height: number) => void state.log.push(`size ${width} ${height}`);
    render = (scene: { name?: string }, _camera: unknown) => {
      if (scene.name !== '') state.log.push(this.target === null ? `coarse ${scene.name}` : `smooth ${scene.name}`);
    };
  }
  return { state, FakeRenderer };
});
vi.mock('three', async (original) => ({ ...(await original<object>()), WebGLRenderer: card.FakeRenderer }));

const FRAME_MS = 16;
const REST_MS = 350;
let renderer: WebGLRenderer;

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'performance'] });
  vi.stubGlobal('requestAnimationFrame', (act: () => void) => setTimeout(act, FRAME_MS));
  Object.assign(card.state, { drawing: false, lost: false, compiling: false, log: [], heard: new Map() });
  renderer = patientRenderer({});
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

/** A scene of one thing that is seen. */
const ask = (name: string): void => {
  const traverseVisible = (see: (object: object) => void): void => see({ material: {} });
  renderer.render({ name, traverseVisible } as unknown as Scene, {} as Camera);
};
const pass = (ms: number): void => void vi.advanceTimersByTime(ms);
/** The card is done after so long. */
function done(afterMs: number): void {
  pass(afterMs);
  card.state.drawing = false;
  pass(24);
}
/** What was drawn since it was last asked. */
const drawn = (): string[] => card.state.log.splice(0).filter((line) => line !== 'compile');

describe('a renderer that does not wait for its card', () => {
  it('lets the page show its own answer first, draws coarse, and smooth once nothing moves', () => {
    ask('one');
    pass(FRAME_MS);
    expect(drawn()).toEqual([]);
    pass(FRAME_MS);
    expect([drawn(), isAtRest(renderer)]).toEqual([['coarse one'], false]);
    done(100);
    pass(REST_MS);
    expect(drawn()).toEqual(['smooth one']);
    done(300);
    expect(isAtRest(renderer)).toBe(true);
    pass(10 * REST_MS);
    expect(drawn()).toEqual([]);
  });

  it('begins no picture while one is drawn; of those that were asked for meanwhile it draws the last', () => {
    ask('one');
    pass(2 * FRAME_MS);
    for (const name of ['two', 'three', 'four']) {
      ask(name);
      pass(100);
    }
    expect(drawn()).toEqual(['coarse one']);
    done(0);
    pass(2 * FRAME_MS);
    expect(drawn()).toEqual(['coarse four']);
  });

  it('gives the canvas its size with the next picture, never while one is drawn', () => {
    renderer.setSize(800, 600);
    ask('one');
    pass(2 * FRAME_MS);
    expect(drawn()).toEqual(['size 800 600', 'coarse one']);
    renderer.setSize(800, 300);
    ask('one');
    pass(200);
    expect(drawn()).toEqual([]);
    done(0);
    pass(2 * FRAME_MS);
    expect(drawn()).toEqual(['size 800 300', 'coarse one']);
  });

  it('draws smooth at once where that takes no time', () => {
    ask('one');
    pass(2 * FRAME_MS);
    done(5);
    pass(REST_MS);
    done(5);
    drawn();
    ask('two');
    expect(drawn()).toEqual(['smooth two']);
  });

  it('waits for programs without asking for them, and keeps each', () => {
    card.state.compiling = true;
    ask('one');
    pass(500);
    expect(drawn()).toEqual([]);
    card.state.compiling = false;
    pass(8);
    expect(drawn()).toEqual(['coarse one']);
    done(100);
    pass(REST_MS);
    const [program] = renderer.info.programs ?? [];
    expect(program?.usedTimes).toBe(2);
    // What was drawn once is not looked through for programs again.
    card.state.log.splice(0);
    done(100);
    ask('two');
    pass(2 * FRAME_MS);
    expect(card.state.log).toEqual(['coarse two']);
  });

  it('asks nothing of a lost card, and draws again once it is back', () => {
    ask('one');
    pass(2 * FRAME_MS);
    card.state.lost = true;
    card.state.heard.get('webglcontextlost')?.();
    ask('two');
    pass(1000);
    expect(drawn()).toEqual(['coarse one']);
    card.state.lost = false;
    card.state.heard.get('webglcontextrestored')?.();
    ask('three');
    pass(2 * FRAME_MS);
    expect(drawn()).toEqual(['coarse three']);
  });
});

it('draws what lies in front first, whatever it is made of', () => {
  const item = (id: number, z: number, renderOrder = 0) => ({
    id,
    z,
    renderOrder,
    groupOrder: 0,
    material: { id: -id },
  });
  const items = [item(1, 0.9), item(2, 0.1), item(3, 0.5, -1), item(4, 0.1)] as unknown as Parameters<
    typeof nearestFirst
  >[0][];
  expect(items.toSorted(nearestFirst).map(({ id }) => id)).toEqual([3, 2, 4, 1]);
});
