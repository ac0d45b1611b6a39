import {
  type Camera,
  Mesh,
  NoBlending,
  OrthographicCamera,
  PlaneGeometry,
  type Scene,
  ShaderMaterial,
  SRGBColorSpace,
  Vector2,
  type WebGLRenderer,
  WebGLRenderTarget,
} from 'three';

/** Places within a pixel at which the card looks what is there. */
const SAMPLES = 4;

/**
 * Draws a scene with its edges smoothed, beside the canvas and then onto it: where the processor draws, three times the
 * work of drawing it straight onto the canvas, whose pixels are whole.
 */
export function smoothPicture(renderer: WebGLRenderer, draw: (scene: Scene, camera: Camera) => void) {
  const target = new WebGLRenderTarget(1, 1, {
    samples: SAMPLES,
    colorSpace: SRGBColorSpace,
    // The numbers as they are, not decoded again where they are copied.
    internalFormat: 'RGBA8',
    resolveDepthBuffer: false,
  });
  // three's own mark for a picture that holds colours as the screen wants them, so that the same programs draw both.
  (target as { isXRRenderTarget?: boolean }).isXRRenderTarget = true;
  const sheet = new Mesh(new PlaneGeometry(2, 2), copyOf(target));
  sheet.frustumCulled = false;
  const eye = new OrthographicCamera(-1, 1, 1, -1, 0, 1);
  const size = new Vector2();
  return (scene: Scene, camera: Camera): void => {
    renderer.getDrawingBufferSize(size);
    target.setSize(size.x, size.y);
    renderer.setRenderTarget(target);
    draw(scene, camera);
    renderer.setRenderTarget(null);
    draw(sheet as unknown as Scene, eye);
  };
}

/** What is in a picture, as it is. */
function copyOf({ texture }: WebGLRenderTarget): ShaderMaterial {
  return new ShaderMaterial({
    uniforms: { picture: { value: texture } },
    vertexShader: 'varying vec2 at; void main() { at = uv; gl_Position = vec4(position.xy, 0.0, 1.0); }',
    fragmentShader:
      'uniform sampler2D picture; varying vec2 at; void main() { gl_FragColor = texture2D(picture, at); }',
    blending: NoBlending,
    depthTest: false,
    depthWrite: false,
    toneMapped: false,
  });
}
