import { bad, good, type Result } from '../../shared/base/result.ts';
import type { OpenedProject, Saved } from '../../shared/desktop/contract.ts';
import { KEY_FRAGMENT, KEY_HEADER, type ListedProject, PROJECT_ROUTE } from '../../shared/desktop/http.ts';
import type { NamedFile } from '../../shared/document/project/projectFiles.ts';

export interface ServerDesktop {
  /** null = the server was started on no such project */
  open(name: 'given' | 'demo'): Promise<Result<OpenedProject> | null>;
  save(projectText: string, added: readonly NamedFile[], changed: readonly NamedFile[]): Promise<Result<Saved>>;
}

/** The local server's projects, by the key in the window's own address. */
export function serverDesktop(page: Window): ServerDesktop {
  const key = new URLSearchParams(page.location.hash.slice(1)).get(KEY_FRAGMENT) ?? '';

  const ask = (path: string, put?: string | Uint8Array): Promise<Response> =>
    page.fetch(`${PROJECT_ROUTE}/${path}`, {
      headers: { [KEY_HEADER]: key },
      ...(put === undefined ? {} : { method: 'PUT', body: typeof put === 'string' ? put : new Blob([put.slice()]) }),
    });

  return {
    open: (name) => reached(() => open(ask, name)),
    save: (projectText, added, changed) => reached(() => save(ask, projectText, added, changed)),
  };
}

type Ask = (path: string, put?: string | Uint8Array) => Promise<Response>;

async function open(ask: Ask, name: string): Promise<Result<OpenedProject> | null> {
  const response = await ask(name);
  if (response.status === 204) return null;
  const listed = await answered<ListedProject>(response);
  if (!listed.ok) return listed;
  const { label, savesInPlace, projectText, paths } = listed.value;
  const files = await Promise.all(paths.map((path) => fetchFile(ask, name, path)));
  const problems = files.flatMap((file) => (file.ok ? [] : file.problems));
  if (problems.length > 0) return bad(problems);
  return good({ label, savesInPlace, projectText, files: files.flatMap((file) => (file.ok ? [file.value] : [])) });
}

async function fetchFile(ask: Ask, name: string, path: string): Promise<Result<NamedFile>> {
  const response = await ask(`${name}/files/${encoded(path)}`);
  if (!response.ok) return bad([{ path, message: `the local server answered ${response.status}` }]);
  return good({ path, bytes: new Uint8Array(await response.arrayBuffer()) });
}

async function save(
  ask: Ask,
  projectText: string,
  added: readonly NamedFile[],
  changed: readonly NamedFile[],
): Promise<Result<Saved>> {
  const files = [...added.map((file) => ['added', file] as const), ...changed.map((file) => ['tables', file] as const)];
  for (const [word, file] of files) {
    const put = await answered<unknown>(await ask(`given/${word}/${encoded(file.path)}`, file.bytes));
    if (!put.ok) return put;
  }
  const saved = await answered<string>(await ask('given', projectText));
  return saved.ok ? good({ kind: 'saved', where: saved.value }) : saved;
}

function encoded(path: string): string {
  return path.split('/').map(encodeURIComponent).join('/');
}

/** The server answers a `Result`, or plain words when it refuses. */
async function answered<T>(response: Response): Promise<Result<T>> {
  if (response.headers.get('content-type')?.startsWith('application/json')) return (await response.json()) as Result<T>;
  return bad([
    { path: '', message: `the local server answered ${response.status}: ${(await response.text()).trim()}` },
  ]);
}

async function reached<Answer>(asking: () => Promise<Answer>): Promise<Answer | Result<never>> {
  try {
    return await asking();
  } catch {
    return bad([{ path: '', message: 'the local server does not answer; is it still running?' }]);
  }
}
