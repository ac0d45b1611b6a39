import {
  type Camera,
  Group,
  type Material,
  type Object3D,
  type Scene,
  WebGLRenderer,
  type WebGLRendererParameters,
} from 'three';
import { smoothPicture } from './smoothPicture.ts';

/** ms between two looks whether the card is done: at first, and at most, as the looks come twice as seldom each time. */
const LOOK_MS = { first: 4, most: 24 } as const;
/** ms that a smooth picture may take and still be drawn whenever something moves. */
const SLOW_MS = 34;
/** ms that nothing moves before a coarse picture is drawn again, smooth. */
const REST_MS = 350;

/**
 * A renderer that never makes the window wait for the card. Commands go out while the card draws, but to give its canvas
 * another size, or to ask for a program just compiled, is answered only when all that was asked before is drawn: seconds
 * where the processor draws. So a picture is begun only when the one before is done, and what was asked meanwhile is
 * drawn once, as it is then. Where pictures are slow, and for the first one, the page shows its own answer to an input
 * first, what moves is drawn coarse, and the picture becomes smooth when it rests.
 */
export function patientRenderer(parameters: WebGLRendererParameters): WebGLRenderer {
  const renderer = new WebGLRenderer({ ...parameters, antialias: false });
  renderer.setOpaqueSort(nearestFirst);
  // A smooth picture is drawn in two goes, told as one.
  renderer.info.autoReset = false;
  const draw = renderer.render.bind(renderer) as (scene: Scene, camera: Camera) => void;
  const drawSmooth = smoothPicture(renderer, draw);
  const size = patientSize(renderer);
  const card = watchCard(renderer, () => (asked === null ? rest() : later()));
  let asked: Asked | null = null;
  let last: Asked | null = null;
  let waiting = false;
  let compiling = false;
  let resting: ReturnType<typeof setTimeout> | undefined;

  const drawNow = ({ scene, camera }: Asked, smooth: boolean): void => {
    // A lost card draws nothing; once it is back the picture is asked for again.
    if (renderer.getContext().isContextLost()) return;
    size.give();
    renderer.info.reset();
    if (smooth) drawSmooth(scene, camera);
    else draw(scene, camera);
    keepPrograms(renderer);
    card.begun(smooth);
  };
  const drawAsked = (): void => {
    if (asked === null || compiling || card.isBusy()) return;
    compiling = true;
    const compiled = (): void => {
      compiling = false;
      // What there is to see may have changed while its programs were made; what is there now is drawn.
      if (asked === null) return;
      last = asked;
      asked = null;
      drawNow(last, !card.isSlow());
    };
    // A fast card makes its programs as it draws.
    if (card.isSlow()) whenCompiled(renderer, asked, compiled);
    else compiled();
  };
  const later = (): void => {
    if (waiting) return;
    waiting = true;
    afterFrames(card.isSlow() ? 2 : 1, () => {
      waiting = false;
      drawAsked();
    });
  };
  const rest = (): void => {
    clearTimeout(resting);
    if (card.isSmooth()) return;
    resting = setTimeout(() => {
      if (asked === null && last !== null && !compiling && !card.isBusy()) drawNow(last, true);
    }, REST_MS);
  };
  renderer.render = (scene, camera) => {
    asked = { scene: scene as Scene, camera };
    clearTimeout(resting);
    if (card.isBusy()) return;
    if (card.isSlow()) later();
    else drawAsked();
  };
  atRest.set(renderer, () => asked === null && !compiling && !card.isBusy() && card.isSmooth());
  return renderer;
}

const atRest = new WeakMap<WebGLRenderer, () => boolean>();

/** Whether all that was asked for is drawn, smooth. */
export function isAtRest(renderer: WebGLRenderer): boolean {
  return atRest.get(renderer)?.() ?? true;
}

interface Asked {
  readonly scene: Scene;
  readonly camera: Camera;
}

/** What is asked of the canvas' size, until it is given to it with the next picture. */
function patientSize(renderer: WebGLRenderer): { give(): void } {
  const { domElement: canvas } = renderer;
  let wanted = { width: 0, height: 0, ratio: 1 };
  let given = wanted;
  renderer.setPixelRatio = (ratio = wanted.ratio) => {
    if (ratio !== wanted.ratio) wanted = { ...wanted, ratio };
  };
  renderer.setSize = (width, height) => {
    if (width !== wanted.width || height !== wanted.height) wanted = { ...wanted, width, height };
  };
  return {
    give: () => {
      if (wanted === given) return;
      given = wanted;
      renderer.setDrawingBufferSize(wanted.width, wanted.height, wanted.ratio);
      canvas.style.width = `${wanted.width}px`;
      canvas.style.height = `${wanted.height}px`;
    },
  };
}

/** In the second frame from now the page of this one is on the screen. */
function afterFrames(frames: number, act: () => void): void {
  if (frames === 0) act();
  else requestAnimationFrame(() => afterFrames(frames - 1, act));
}

/**
 * Whether the card still draws, whether its last picture was a smooth one, and whether smooth ones take it long, as is
 * thought until one is drawn; `done` is called when it is free again.
 */
function watchCard(renderer: WebGLRenderer, done: () => void) {
  const gl = renderer.getContext() as WebGL2RenderingContext;
  let drawing: { readonly fence: WebGLSync; readonly sinceMs: number } | null = null;
  let smooth = false;
  let slow = true;
  // What a lost card was asked for is never done.
  const forget = (): void => {
    drawing = null;
  };
  renderer.domElement.addEventListener('webglcontextlost', forget);
  renderer.domElement.addEventListener('webglcontextrestored', forget);
  const isBusy = (): boolean => {
    if (drawing === null) return false;
    if (gl.getSyncParameter(drawing.fence, gl.SYNC_STATUS) !== gl.SIGNALED) return true;
    if (smooth) slow = performance.now() - drawing.sinceMs > SLOW_MS;
    gl.deleteSync(drawing.fence);
    drawing = null;
    return false;
  };
  const lookAfter = (ms: number): void => {
    setTimeout(() => {
      if (isBusy()) lookAfter(Math.min(2 * ms, LOOK_MS.most));
      else done();
    }, ms);
  };
  return {
    isBusy,
    isSlow: () => slow,
    isSmooth: () => smooth,
    begun: (isSmooth: boolean): void => {
      smooth = isSmooth;
      const fence = gl.fenceSync(gl.SYNC_GPU_COMMANDS_COMPLETE, 0);
      gl.flush();
      if (fence !== null) drawing = { fence, sinceMs: performance.now() };
      lookAfter(LOOK_MS.first);
    },
  };
}

type Sort = NonNullable<Parameters<WebGLRenderer['setOpaqueSort']>[0]>;

/** What lies in front is drawn first, so that what it hides is not coloured; three's own order goes by material before that. */
export const nearestFirst: Sort = (a, b) =>
  a.groupOrder - b.groupOrder || a.renderOrder - b.renderOrder || a.z - b.z || a.id - b.id;

/** Acts once the card has the programs of a picture, at once where it has them all. */
function whenCompiled(renderer: WebGLRenderer, { scene, camera }: Asked, act: () => void): void {
  const found = newIn(renderer, scene);
  const traverse = (see: (object: Object3D) => void): void => found.forEach(see);
  if (found.length > 0) renderer.compile(Object.assign(new Group(), { traverse }), camera, scene);
  const look = (): void => {
    const { programs } = renderer.info;
    if (renderer.getContext().isContextLost() || programs?.every(isReady) !== false) act();
    else setTimeout(look, LOOK_MS.first);
  };
  look();
}

/** What is seen and was never drawn yet. To look through all of a picture for programs costs as much as to draw it. */
function newIn({ properties }: WebGLRenderer, scene: Scene): Object3D[] {
  const found: Object3D[] = [];
  scene.traverseVisible((object) => {
    const { material } = object as { material?: Material | Material[] };
    const made = material === undefined ? [] : [material].flat();
    if (made.some((one) => (properties.get(one) as { currentProgram?: object }).currentProgram === undefined))
      found.push(object);
  });
  return found;
}

/** three's own word, which its types do not have. */
function isReady(program: object): boolean {
  return (program as { isReady(): boolean }).isReady();
}

const kept = new WeakSet<object>();

/** A program is kept as long as its renderer: to compile it again for the next run that is chosen is to wait for it again. */
function keepPrograms({ info }: WebGLRenderer): void {
  for (const program of info.programs ?? []) {
    if (kept.has(program)) continue;
    kept.add(program);
    program.usedTimes++;
  }
}
