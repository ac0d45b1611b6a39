import { randomBytes, timingSafeEqual } from 'node:crypto';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import path from 'node:path';
import { bad, good, type Result } from '../../shared/base/result.ts';
import { KEY_FRAGMENT, KEY_HEADER, type ListedProject, PROJECT_ROUTE } from '../../shared/desktop/http.ts';
import { findProjectFile, readNamedFile, readProjectFiles } from './readProjectFiles.ts';
import { addFiles, replaceTables, saveProject } from './saveProject.ts';
import { decoded, readAsset, WINDOW_HEADERS } from './windowAssets.ts';

/** Bytes. Larger than any project text; a mesh or table added by the window may be as large as a scan is. */
const MAX_TEXT_BYTES = 32 * 1024 * 1024;
const MAX_ADDED_BYTES = 1024 * 1024 * 1024;

/** A project to open at the start; the example that comes with the program is not saved over. */
export interface GivenProject {
  /** its file or folder */
  readonly place: string;
  readonly savesInPlace: boolean;
}

export interface ServeWindowOptions {
  readonly rendererFolder: string;
  readonly demoProject: string;
  /** The project the window opens with; absent = none. */
  readonly given?: GivenProject;
  /** 0 = any free one. */
  readonly port: number;
}

export interface ServedWindow {
  /** With the key in its fragment. */
  readonly address: string;
  close(): Promise<void>;
}

/** Serves the window to a browser on this machine and to nobody else. */
export async function serveWindow(options: ServeWindowOptions): Promise<ServedWindow> {
  const key = randomBytes(24).toString('hex');
  const server = createServer((request, response) => {
    const { port } = server.address() as AddressInfo;
    answer({ ...options, port, key }, request)
      .catch((error: unknown) => text(500, error instanceof Error ? error.message : String(error)))
      .then((reply) => send(response, reply));
  });
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(options.port, '127.0.0.1', resolve);
  });
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${port}/#${KEY_FRAGMENT}=${key}`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

interface Reply {
  readonly status: number;
  readonly type: string;
  readonly body: string | Uint8Array;
}

type Serving = ServeWindowOptions & { readonly key: string };

async function answer(serving: Serving, request: IncomingMessage): Promise<Reply> {
  if (!isOwnHost(request, serving.port)) return text(403, 'not for this address');
  const urlPath = (request.url ?? '/').split('?')[0] ?? '/';
  if (urlPath === PROJECT_ROUTE || urlPath.startsWith(`${PROJECT_ROUTE}/`)) {
    if (!hasKey(request, serving.key)) return text(403, 'the key of this address is missing or old');
    return answerProject(serving, request, urlPath.slice(PROJECT_ROUTE.length));
  }
  if (request.method !== 'GET' && request.method !== 'HEAD') return text(405, 'only reading here');
  const asset = await readAsset(serving.rendererFolder, urlPath);
  return { status: asset.status, type: asset.type, body: asset.bytes };
}

/** A page of another site reaches this server by its own host name or its own origin; both are turned away. */
function isOwnHost(request: IncomingMessage, port: number): boolean {
  const hosts = [`127.0.0.1:${port}`, `localhost:${port}`];
  const { host, origin } = request.headers;
  return host !== undefined && hosts.includes(host) && (origin === undefined || origin === `http://${host}`);
}

function hasKey(request: IncomingMessage, key: string): boolean {
  const given = Buffer.from(String(request.headers[KEY_HEADER] ?? ''));
  const wanted = Buffer.from(key);
  return given.length === wanted.length && timingSafeEqual(given, wanted);
}

async function answerProject(serving: Serving, request: IncomingMessage, route: string): Promise<Reply> {
  const [name, ...rest] = route.split('/').slice(1);
  if (name === 'given' && serving.given === undefined) return { status: 204, type: 'text/plain', body: '' };
  const demo = { place: serving.demoProject, savesInPlace: false };
  const project = name === 'given' ? serving.given : name === 'demo' ? demo : undefined;
  if (project === undefined) return text(404, 'no such project');
  if (request.method === 'GET') return rest.length === 0 ? listing(project) : namedFile(project.place, rest);
  if (request.method !== 'PUT' || !project.savesInPlace) return text(405, 'this project is not saved in place');
  return savePart(project.place, request, rest);
}

async function listing({ place, savesInPlace }: GivenProject): Promise<Reply> {
  const read = await readProjectFiles(place);
  if (!read.ok) return json(422, read);
  const { folder, projectText, files } = read.value;
  const list: ListedProject = {
    label: path.basename(folder),
    savesInPlace,
    projectText,
    paths: files.map((file) => file.path),
  };
  return json(200, good(list));
}

/** `GET <project>/files/<path>`: only what the project names can be read, whatever else lies in its folder. */
async function namedFile(place: string, rest: readonly string[]): Promise<Reply> {
  const found = await findProjectFile(place);
  if (!found.ok) return json(422, found);
  const file = rest[0] === 'files' ? await readNamedFile(found.value, pathOf(rest)) : undefined;
  if (file === undefined) return text(404, 'no such file');
  return file.ok ? { status: 200, type: 'application/octet-stream', body: file.value.bytes } : json(422, file);
}

/**
 * `PUT given/added/<path>` lays a new file beside the project, `given/tables/<path>` writes a part table over the one there;
 * `PUT given` saves the project's text.
 */
async function savePart(place: string, request: IncomingMessage, rest: readonly string[]): Promise<Reply> {
  const found = await findProjectFile(place);
  if (!found.ok) return json(422, found);
  const [word] = rest;
  const filing = word === 'added' || word === 'tables';
  const body = await bodyOf(request, filing ? MAX_ADDED_BYTES : MAX_TEXT_BYTES);
  if (!body.ok) return json(413, body);
  const saved = filing
    ? await (word === 'added' ? addFiles : replaceTables)(path.dirname(found.value), [
        { path: pathOf(rest), bytes: body.value },
      ])
    : await saveProject(found.value, new TextDecoder().decode(body.value), []);
  return json(saved.ok ? 200 : 422, saved);
}

/** The path after the route's own word; empty, which no file is called, when it is not well encoded. */
function pathOf(rest: readonly string[]): string {
  return decoded(`/${rest.slice(1).join('/')}`) ?? '';
}

async function bodyOf(request: IncomingMessage, maxBytes: number): Promise<Result<Uint8Array>> {
  const chunks: Buffer[] = [];
  let size = 0;
  for await (const chunk of request as AsyncIterable<Buffer>) {
    size += chunk.length;
    if (size > maxBytes) return bad([{ path: '', message: `expected at most ${maxBytes} bytes` }]);
    chunks.push(chunk);
  }
  return good(Buffer.concat(chunks));
}

function json(status: number, value: unknown): Reply {
  return { status, type: 'application/json; charset=utf-8', body: JSON.stringify(value) };
}

function text(status: number, message: string): Reply {
  return { status, type: 'text/plain; charset=utf-8', body: `${message}\n` };
}

function send(response: ServerResponse, reply: Reply): void {
  response.writeHead(reply.status, { ...WINDOW_HEADERS, 'content-type': reply.type });
  response.end(reply.body);
}
