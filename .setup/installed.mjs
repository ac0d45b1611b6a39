// Brings node_modules in step with the lock file. Plain JavaScript that needs nothing: it runs before anything is there.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';

export const root = path.resolve(import.meta.dirname, '..');

const OLDEST_NODE = [20, 19];

export function requireNode() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major > OLDEST_NODE[0] || (major === OLDEST_NODE[0] && minor >= OLDEST_NODE[1])) return;
  console.error(`Node.js ${OLDEST_NODE.join('.')} or newer is needed; this is ${process.versions.node}.`);
  process.exit(1);
}

/** Runs npm itself through this Node, so that no shell and no npm.cmd is involved; answers the exit code. */
export function npm(...args) {
  const cli = process.env.npm_execpath;
  const [command, words] = cli?.endsWith('.js') ? [process.execPath, [cli, ...args]] : ['npm', args];
  const shell = command === 'npm' && process.platform === 'win32';
  return spawnSync(command, words, { cwd: root, stdio: 'inherit', shell }).status ?? 1;
}

/** `npm ci`, but only when a package the lock file names is missing or of another version. */
export function installPackages() {
  if (isInstalled()) return;
  console.log('Installing packages (once, about a minute) ...');
  const status = npm('ci', '--no-audit', '--no-fund', '--loglevel=error');
  if (status !== 0) process.exit(status);
}

function isInstalled() {
  const there = path.join(root, 'node_modules', '.package-lock.json');
  if (!existsSync(there)) return false;
  const installed = JSON.parse(readFileSync(there, 'utf8')).packages;
  const wanted = JSON.parse(readFileSync(path.join(root, 'package-lock.json'), 'utf8')).packages;
  return Object.entries(wanted).every(
    // Packages for other systems are in the lock file and rightly absent here.
    ([where, one]) => where === '' || one.optional || one.devOptional || installed[where]?.version === one.version,
  );
}
