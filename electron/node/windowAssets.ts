import { readFile, realpath } from 'node:fs/promises';
import path from 'node:path';
import { isContainedPath } from '../../shared/document/project/namedPaths.ts';
import { realPlace } from './readProjectFiles.ts';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.wasm': 'application/wasm',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ttf': 'font/ttf',
  '.woff2': 'font/woff2',
};

/**
 * What the window may do, said with every answer: its own scripts and nothing else's. `wasm-unsafe-eval` lets the mesh
 * decoder's WebAssembly compile and allows no JavaScript from text. Style attributes are set by the scene's overlays.
 */
const CONTENT_POLICY = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "worker-src 'self'",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' blob: data:",
  "font-src 'self'",
  "connect-src 'self' blob: data:",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

/** On every answer to the window. The cross-origin pair is what lets worker and window share a cancel flag. */
export const WINDOW_HEADERS: Readonly<Record<string, string>> = {
  'content-security-policy': CONTENT_POLICY,
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-embedder-policy': 'require-corp',
  'cross-origin-resource-policy': 'same-origin',
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cache-control': 'no-store',
};

export interface Asset {
  readonly status: 200 | 403 | 404;
  readonly type: string;
  readonly bytes: Uint8Array;
}

/** One file of the built window by the path of its URL, still encoded; nothing outside `folder` is ever read. */
export async function readAsset(folder: string, urlPath: string): Promise<Asset> {
  const name = decoded(urlPath === '/' ? '/index.html' : urlPath);
  if (name === undefined || !isContainedPath(name)) return refused(403);
  try {
    const place = await realPlace(await realpath(folder), name);
    if (place === undefined) return refused(403);
    return {
      status: 200,
      type: TYPES[path.extname(place)] ?? 'application/octet-stream',
      bytes: await readFile(place),
    };
  } catch {
    return refused(404);
  }
}

/** The path without its leading slash, decoded; undefined when it is not well encoded. */
export function decoded(urlPath: string): string | undefined {
  try {
    return decodeURIComponent(urlPath.slice(1));
  } catch {
    return undefined;
  }
}

function refused(status: 403 | 404): Asset {
  return { status, type: 'text/plain; charset=utf-8', bytes: new TextEncoder().encode(`${status}\n`) };
}
