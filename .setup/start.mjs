// npm start [-- PROJECT] [--browser]: sets everything up and opens the window, on the example bay unless told.
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { installPackages, npm, requireNode, root } from './installed.mjs';

/** ms. An Electron that ends sooner than this did not start (no display, no libraries, a refused sandbox). */
const STARTED_AFTER_MS = 4000;
/** ms. Fetching Electron's runtime may take this long and no longer; without a network it fails within seconds. */
const FETCH_LIMIT_MS = 180_000;

const words = process.argv.slice(2);
const wantsBrowser = words.includes('--browser');
const given = words.find((word) => !word.startsWith('-'));
// npm runs this in the project's root; a path is meant from where the user typed it.
const project = given === undefined ? undefined : path.resolve(process.env.INIT_CWD ?? process.cwd(), given);

requireNode();
installPackages();
const built = npm('run', 'build', '--silent');
if (built !== 0) process.exit(built);

const electron = wantsBrowser ? undefined : findElectron();
if (electron === undefined || !(await ranInElectron(electron))) {
  if (!wantsBrowser) console.log("Electron's runtime cannot run here, so the same window opens in the browser.");
  serveInBrowser();
}

/** Electron's program, fetched if need be; undefined when there is none or nothing to show it on. */
function findElectron() {
  if (process.platform === 'linux' && !process.env.DISPLAY && !process.env.WAYLAND_DISPLAY) return undefined;
  const folder = path.join(root, 'node_modules', 'electron');
  if (!existsSync(path.join(folder, 'path.txt'))) {
    console.log("Fetching Electron's runtime (once) ...");
    const options = { cwd: root, timeout: FETCH_LIMIT_MS, stdio: 'ignore' };
    spawnSync(process.execPath, [path.join(folder, 'install.js')], options);
  }
  const pathFile = path.join(folder, 'path.txt');
  if (!existsSync(pathFile)) return undefined;
  const program = path.join(folder, 'dist', readFileSync(pathFile, 'utf8').trim());
  return existsSync(program) ? program : undefined;
}

/** Opens the window in Electron; false when it ended at once, without having shown anything. */
function ranInElectron(program) {
  const startedAt = Date.now();
  const child = spawn(program, [root, project ?? '--example'], { cwd: root, stdio: 'inherit' });
  return new Promise((resolve) => {
    child.on('error', () => resolve(false));
    child.on('exit', (code) => resolve(code === 0 || Date.now() - startedAt > STARTED_AFTER_MS));
  });
}

/** Serves the window on this machine and shows it in the user's browser when there is a display to show it on. */
function serveInBrowser() {
  const program = path.join(root, '.build', 'cli', 'hosewright.js');
  const args = [program, 'serve', project ?? '--example'];
  const server = spawn(process.execPath, args, { cwd: root, stdio: ['ignore', 'pipe', 'inherit'] });
  let said = '';
  let shown = false;
  server.stdout.on('data', (chunk) => {
    process.stdout.write(chunk);
    said += chunk;
    const address = /http:\S+/.exec(said)?.[0];
    if (address === undefined || shown) return;
    shown = true;
    showInBrowser(address);
  });
  server.on('exit', (code) => process.exit(code ?? 1));
  // Ctrl-C reaches the server as well; it ends, and this with it.
  process.on('SIGINT', () => undefined);
  process.on('SIGTERM', () => server.kill());
}

function showInBrowser(address) {
  if (process.platform === 'linux' && !process.env.DISPLAY && !process.env.WAYLAND_DISPLAY) return;
  const [command, args] =
    process.platform === 'darwin'
      ? ['open', [address]]
      : process.platform === 'win32'
        ? ['rundll32', ['url.dll,FileProtocolHandler', address]]
        : ['xdg-open', [address]];
  const opener = spawn(command, args, { stdio: 'ignore', detached: true });
  opener.on('error', () => undefined);
  opener.unref();
}
