// The tests drive the built window in Chromium and read the papers back with pdftotext: finds or installs both.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

const PLACES = [
  process.env.CHROMIUM_PATH,
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  `${process.env.PROGRAMFILES}\\Google\\Chrome\\Application\\chrome.exe`,
  `${process.env['PROGRAMFILES(X86)']}\\Google\\Chrome\\Application\\chrome.exe`,
];

function findChromium() {
  return PLACES.find((place) => place && existsSync(place));
}

function hasPdfTools() {
  return ['pdftotext', 'pdftocairo', 'pdfinfo'].every((tool) => !spawnSync(tool, ['-v']).error);
}

/** The browser's path; ends the process with a sentence when there is none and none can be installed. */
export function chromiumPath() {
  if (!findChromium() || !hasPdfTools()) installOnDebian();
  const found = findChromium();
  if (found && hasPdfTools()) return found;
  const missing = [
    ...(found ? [] : ['Chromium or Chrome']),
    ...(hasPdfTools() ? [] : ['poppler (pdftotext, pdftocairo)']),
  ];
  console.error(
    `The tests need ${missing.join(' and ')}. Install it (Debian: apt-get install chromium poppler-utils, as root)` +
      ' or set CHROMIUM_PATH to the browser, then run the same command again.',
  );
  process.exit(1);
}

function installOnDebian() {
  if (process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) return;
  console.log('Installing Chromium and poppler with apt-get (once, about a minute) ...');
  const options = { stdio: 'inherit', env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } };
  spawnSync('apt-get', ['update', '-qq'], options);
  spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium', 'poppler-utils'], options);
}
