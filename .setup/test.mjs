// npm test: sets everything up, runs the one gate (npm run check) and says in one plain line how many tests passed.
import { readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { chromiumPath } from './chromium.mjs';
import { installPackages, npm, requireNode, root } from './installed.mjs';

const unitReport = path.join(root, '.tmp', 'vitest.json');
const windowReport = path.join(root, '.tmp', 'playwright.json');

requireNode();
installPackages();
process.env.CHROMIUM_PATH = chromiumPath();
for (const report of [unitReport, windowReport]) rmSync(report, { force: true });

const status = npm('run', 'check', '--silent');
const counts = [unitCounts(), windowCounts()];
const sum = (key) => counts.reduce((total, one) => total + one[key], 0);
const skipped = sum('skipped');
if (skipped > 0) console.log(`${skipped} skipped, each with its reason above`);
// A gate that fails outside the tests (types, layers, format, build) is a failure too, and must read as one.
const failed = sum('failed') || (status === 0 ? 0 : 1);
if (status !== 0 && sum('failed') === 0) console.log('the gate failed outside the tests; see above');
console.log(`${sum('passed')} passed, ${failed} failed`);
process.exit(status);

function unitCounts() {
  const report = readReport(unitReport);
  if (report === undefined) return { passed: 0, failed: 0, skipped: 0 };
  return { passed: report.numPassedTests, failed: report.numFailedTests, skipped: report.numPendingTests };
}

function windowCounts() {
  const stats = readReport(windowReport)?.stats;
  if (stats === undefined) return { passed: 0, failed: 0, skipped: 0 };
  return { passed: stats.expected + stats.flaky, failed: stats.unexpected, skipped: stats.skipped };
}

function readReport(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return undefined;
  }
}
