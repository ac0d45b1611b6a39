import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { copyFile, cp, mkdir, readdir, readFile, rm } from 'node:fs/promises';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { EndTrial } from '../../../shared/document/endTrial/schema.ts';
import { LayReport } from '../../../shared/document/lay/schema.ts';
import { bundled } from '../bundled.ts';
import { exampleLay, exampleReport } from '../exampleReport.ts';
import { scratchFolder } from '../scratchFolder.ts';
import { smallBay } from '../smallBay.ts';

let program: string;
let programFolder: string;
beforeAll(async () => {
  programFolder = await bundled({
    'cli/hosewright': 'electron/cli/hosewright.ts',
    'node/jobWorker': 'tests/electron/cli/fakeLayWorker.ts',
  });
  program = path.join(programFolder, '.build', 'cli', 'hosewright.js');
  const fonts = path.join(programFolder, '.build', 'node', 'fonts');
  await mkdir(fonts, { recursive: true });
  for (const name of ['DejaVuSans.ttf', 'DejaVuSans-Bold.ttf']) {
    const from = path.resolve(import.meta.dirname, '../../../node_modules/dejavu-fonts-ttf/ttf', name);
    await copyFile(from, path.join(fonts, name));
  }
});
afterAll(() => rm(programFolder, { recursive: true, force: true }));

interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

function hosewright(
  cwd: string,
  args: readonly string[],
  meanwhile: (child: ChildProcess) => void = () => undefined,
  cli = program,
) {
  return new Promise<Ended>((resolve) => {
    const child = spawn(process.execPath, [cli, ...args], { cwd });
    let out = '';
    let err = '';
    child.stdout.on('data', (chunk) => {
      out += chunk;
    });
    child.stderr.on('data', (chunk) => {
      err += chunk;
    });
    child.on('close', (code) => resolve({ code, out, err }));
    meanwhile(child);
  });
}

/** A project that is whole as far as reading its files goes; the fake worker does the rest by its name. */
const named = (name: string) => ({
  'project.json': JSON.stringify({ name, bay: { meshes: [{ path: 'bay.stl' }] } }),
  'bay.stl': 'solid\nendsolid\n',
});

describe('exit codes', () => {
  test.each([
    ['clean', 0],
    ['overridden', 0],
    ['stop', 1],
    ['near-miss', 1],
    ['unheard-of', 2],
    ['fault', 70],
  ])('lay of a %s project ends with %i', async (name, code) => {
    await using scratch = await scratchFolder();
    await scratch.write(named(name));
    const ended = await hosewright(scratch.folder, ['lay', '.']);
    expect(ended.code).toBe(code);
    if (name === 'unheard-of') {
      expect(ended.err).toBe('name: expected another, got "unheard-of"\nruns: expected runs\n');
      expect(ended.out).toBe('');
    }
    if (name === 'fault') expect(ended.err).toContain('thrown on purpose');
  });

  test('bad input is listed whole, one problem a line, before anything is laid', async () => {
    await using scratch = await scratchFolder();
    const project = {
      format: 'hosewright-project',
      version: 1,
      name: '',
      bay: { meshes: [{ path: 'gone.stl' }, { path: '../out.stl' }] },
      tables: { hoses: ['hoses.csv'], ends: [] },
    };
    await scratch.write({ 'project.json': JSON.stringify(project) });
    const ended = await hosewright(scratch.folder, ['lay', 'project.json']);
    expect(ended.code).toBe(2);
    const lines = ended.err.trimEnd().split('\n');
    for (const start of [
      'name: ',
      'bay.meshes[1].path: ',
      'tables.ends: ',
      'bay.meshes[0].path: ',
      'tables.hoses[0]: ',
    ]) {
      expect(lines.some((line) => line.startsWith(start))).toBe(true);
    }
  });

  test('a wrong command line ends with 2 and shows how it goes', async () => {
    const ended = await hosewright('.', ['lay']);
    expect(ended.code).toBe(2);
    expect(ended.err).toContain('hosewright lay    PROJECT');
  });
});

describe('output', () => {
  test('--json prints the report alone, and --out writes the same', async () => {
    await using scratch = await scratchFolder();
    await scratch.write(named('stop'));
    const ended = await hosewright(scratch.folder, ['lay', '.', '--json', '--out', 'laid/first']);
    expect(ended.err).toBe('');
    expect(LayReport.parse(JSON.parse(ended.out)).findings).toHaveLength(1);
    expect(await readFile(path.join(scratch.folder, 'laid/first/lay-report.json'), 'utf8')).toBe(ended.out);
  });

  test('without --out nothing is written', async () => {
    await using scratch = await scratchFolder();
    await scratch.write(named('clean'));
    await hosewright(scratch.folder, ['lay', '.']);
    expect((await readdir(scratch.folder)).sort()).toEqual(['bay.stl', 'project.json']);
  });

  test('check and sheets take an earlier report; what is wrong with it is listed with the rest', async () => {
    await using scratch = await scratchFolder();
    await scratch.write({
      ...named('clean'),
      'lay.json': JSON.stringify(exampleReport([exampleLay], [])),
      'broken.json': JSON.stringify({ ...exampleReport([exampleLay], []), seed: 1.5, extra: 1 }),
    });
    expect((await hosewright(scratch.folder, ['check', '.', '--lay', 'lay.json'])).code).toBe(0);
    const sheets = await hosewright(scratch.folder, ['sheets', '.', '--lay', 'lay.json', '--run', 'feed']);
    expect(sheets.out).toBe(`${path.join('papers', 'build.txt')}\n`);
    const paper = await readFile(path.join(scratch.folder, 'papers/build.txt'), 'utf8');
    expect(paper).toMatch(/^\d{4}-\d\d-\d\d Test rig true feed$/);
    const broken = await hosewright(scratch.folder, ['check', 'nowhere', '--lay', 'broken.json']);
    expect(broken.code).toBe(2);
    expect(broken.err).toMatch(/^nowhere: /m);
    expect(broken.err).toMatch(/^seed: /m);
    expect(broken.err).toMatch(/^extra: /m);
  });

  test('schema, help and version', async () => {
    const manifest = JSON.parse(await readFile('package.json', 'utf8'));
    expect((await hosewright('.', ['--version'])).out).toBe(`${manifest.version}\n`);
    expect((await hosewright('.', ['--help'])).out).toContain('never certifies');
    for (const name of ['project', 'lay-report', 'part-tables']) {
      const schema = JSON.parse((await hosewright('.', ['schema', name])).out);
      expect(schema.$schema).toContain('json-schema.org');
      expect(Object.keys(schema.properties).length).toBeGreaterThan(2);
    }
  });

  test('Ctrl-C twice stops work that does not listen, and says that nothing was written', async () => {
    await using scratch = await scratchFolder();
    await scratch.write(named('forever'));
    const started = path.join(scratch.folder, 'started');
    const ended = await hosewright(scratch.folder, ['lay', '.', '--out', '.'], (child) => {
      // The fake worker leaves this file once it works; a signal before that would end any program.
      let sent = 0;
      const timer = setInterval(() => existsSync(started) && sent++ < 2 && child.kill('SIGINT'), 100);
      child.on('close', () => clearInterval(timer));
    });
    expect(ended).toEqual({ code: 130, out: '', err: 'stopped; nothing was written\n' });
    expect((await readdir(scratch.folder)).sort()).toEqual(['bay.stl', 'project.json', 'started']);
  });
});

test('the real thing: a small rig is laid, checked again and put on paper', async () => {
  await using scratch = await scratchFolder();
  await scratch.write(smallBay());
  const real = await bundled({
    'cli/hosewright': 'electron/cli/hosewright.ts',
    'node/jobWorker': 'electron/node/jobWorker.ts',
  });
  await cp(path.join(programFolder, '.build/node/fonts'), path.join(real, '.build/node/fonts'), { recursive: true });
  const cli = path.join(real, '.build/cli/hosewright.js');
  const laid = await hosewright(scratch.folder, ['lay', '.', '--json', '--out', '.'], undefined, cli);
  const report = LayReport.parse(JSON.parse(laid.out));
  expect(report.lays.map((lay) => [lay.run, lay.outcome])).toEqual([['feed', 'laid']]);
  const lay = report.lays[0];
  // A straight end's C is its one length, 10 + 10 mm; overall = cut + C at both ends.
  expect(lay?.overallLengthMm).toBeCloseTo((lay?.cutLengthMm ?? 0) + 40, 6);
  expect(laid.code).toBe(report.findings.some((finding) => finding.severity === 'stop') ? 1 : 0);
  const checked = await hosewright(
    scratch.folder,
    ['check', '.', '--lay', 'lay-report.json', '--json'],
    undefined,
    cli,
  );
  expect(JSON.parse(checked.out).findings).toEqual(report.findings);
  const sheets = await hosewright(scratch.folder, ['sheets', '.', '--lay', 'lay-report.json'], undefined, cli);
  const papers = sheets.out.trimEnd().split('\n');
  expect(papers.some((name) => name.endsWith('.pdf'))).toBe(true);
  for (const name of papers) expect((await readFile(path.join(scratch.folder, name))).length).toBeGreaterThan(100);
  const trial = await hosewright(scratch.folder, ['trial', '.', '--run', 'feed', '--json'], undefined, cli);
  expect(trial.code).toBe(0);
  const tried = EndTrial.parse(JSON.parse(trial.out));
  expect([tried.tried, tried.entries[0]?.ends]).toEqual([1, { a: 'straight-6', b: 'straight-6' }]);
  const relay = ['relay', '.', '--run', 'feed', '--lay', 'lay-report.json', '--json'];
  const again = await hosewright(scratch.folder, relay, undefined, cli);
  expect(again.code).toBe(0);
  expect(LayReport.parse(JSON.parse(again.out)).lays[0]?.cutLengthMm).toBeCloseTo(lay!.cutLengthMm, 1);
  const middle = lay!.centreline.points[Math.floor(lay!.centreline.points.length / 2)]!;
  const pull = `${lay!.cutLengthMm / 2},${middle[0]},${middle[1] + 15},${middle[2]}`;
  const pulled = JSON.parse((await hosewright(scratch.folder, [...relay, '--pull', pull], undefined, cli)).out);
  expect(pulled.hold.offMm).toBeLessThan(0.5);
  const moved = await hosewright(scratch.folder, [...relay, '--move', 'right,600,20,60'], undefined, cli);
  expect(JSON.parse(moved.out).ends.b.seatPoint).toEqual([600, 20, 60]);
  const nowhere = await hosewright(scratch.folder, [...relay, '--move', 'wrong,600,20,60'], undefined, cli);
  expect(nowhere).toMatchObject({ code: 2, err: expect.stringContaining('wrong') });
  const unknown = await hosewright(scratch.folder, ['lay', '.', '--run', 'drain'], undefined, cli);
  expect(unknown).toMatchObject({ code: 2, out: '', err: expect.stringContaining('"drain"') });
  await rm(real, { recursive: true });
}, 300_000);
