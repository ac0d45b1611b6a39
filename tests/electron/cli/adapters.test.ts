import { spawn } from 'node:child_process';
import { rm } from 'node:fs/promises';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { LayReport } from '../../../shared/document/lay/schema.ts';
import { bundled } from '../bundled.ts';
import { scratchFolder } from '../scratchFolder.ts';
import { smallBay } from '../smallBay.ts';

let folder: string;
let cli: string;
beforeAll(async () => {
  folder = await bundled({
    'cli/hosewright': 'electron/cli/hosewright.ts',
    'node/jobWorker': 'electron/node/jobWorker.ts',
  });
  cli = path.join(folder, '.build', 'cli', 'hosewright.js');
});
afterAll(() => rm(folder, { recursive: true, force: true }));

function hosewright(cwd: string, args: readonly string[]): Promise<{ code: number | null; out: string; err: string }> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [cli, ...args], { cwd });
    let [out, err] = ['', ''];
    child.stdout.on('data', (chunk) => {
      out += chunk;
    });
    child.stderr.on('data', (chunk) => {
      err += chunk;
    });
    child.on('close', (code) => resolve({ code, out, err }));
  });
}

const ADAPTERS = [
  'id,name,form,port_seat,port_dash,seat,dash,bend_angle_deg,port_to_bend_mm,bend_to_seat_mm,turning,diameter_mm,material,provenance,source',
  'npt-elbow,Test taper elbow,elbow,npt-1-4,6,flare-37,6,90,20,24,taper,20,steel,example,invented for a test',
  '',
].join('\n');

/** The small rig with its left hose off a taper elbow that looks up, so that the run starts upwards and comes down at the right. */
function onElbow(adapters: unknown): Record<string, string | Uint8Array> {
  const port = { up: [0, 0, 1], dash: 6 };
  return {
    ...smallBay({
      tables: { hoses: ['hoses.csv'], ends: ['ends.csv'], adapters: ['adapters.csv'] },
      ports: [
        { ...port, id: 'left', name: 'Left', seatPoint: [0, 0, 60], axis: [1, 0, 0], seat: 'npt-1-4', adapters },
        { ...port, id: 'right', name: 'Right', seatPoint: [520, 0, 200], axis: [-1, 0, 0], seat: 'flare-37' },
      ],
    }),
    'adapters.csv': ADAPTERS,
  };
}

describe('hosewright with adapters on ports', () => {
  it('lays from the seat of the adapter, tells it, and the range of its taper', async () => {
    await using scratch = await scratchFolder();
    await scratch.write(onElbow([{ adapter: 'npt-elbow', clockRangeDeg: [-20, 20] }]));
    const laid = await hosewright(scratch.folder, ['lay', '.', '--json', '--out', '.']);
    const report = LayReport.parse(JSON.parse(laid.out));
    const [lay] = report.lays;
    expect(lay?.outcome).toBe('laid');
    expect((report.warnings ?? []).join()).not.toMatch(/adapter|taper|seats on/);
    // 20 mm out along +x, then 24 mm up.
    expect(lay?.ends.a.seatPoint.map((v) => Math.round(v * 1e6) / 1e6)).toEqual([20, 0, 84]);
    expect(lay?.ends.a.adapters?.[0]).toMatchObject({ id: 'npt-elbow', clockDeg: 0, diameterMm: 20 });
    expect(lay?.taper?.poses.map((p) => Math.round(p.clocks[0]?.clockDeg ?? 99))).toEqual([-20, -7, 7, 20]);
    const table = await hosewright(scratch.folder, ['lay', '.']);
    expect(table.out).toMatch(/ON ADAPTERS\n.*\nfeed +A +npt-elbow at 0°/);
    expect(table.out).toMatch(/ON TAPER THREADS[^\n]*\n.*\nfeed +npt-elbow -20° to 20°/);
    const stops = report.findings.filter((f) => f.severity === 'stop');
    expect(laid.code).toBe(stops.length > 0 ? 1 : 0);
    const checked = await hosewright(scratch.folder, ['check', '.', '--lay', 'lay-report.json', '--json']);
    expect(JSON.parse(checked.out).findings).toEqual(report.findings);
  });

  it('forbids cutting a hose that does not fit at every clock of the range, and says at which', async () => {
    await using scratch = await scratchFolder();
    await scratch.write(onElbow([{ adapter: 'npt-elbow', clockRangeDeg: [-120, 120] }]));
    const { code, out } = await hosewright(scratch.folder, ['lay', '.', '--json']);
    const findings = LayReport.parse(JSON.parse(out)).findings.filter((f) => f.check === 'taperRange');
    expect(code).toBe(1);
    expect(findings.some((f) => f.severity === 'stop')).toBe(true);
    expect(findings[0]?.message).toMatch(/npt-elbow at END A at -?1[0-9]{2} degrees/);
  });

  it('ends with 2 and names the place of an adapter that no table has', async () => {
    await using scratch = await scratchFolder();
    await scratch.write(onElbow([{ adapter: 'npt-elbows' }]));
    const { code, out, err } = await hosewright(scratch.folder, ['lay', '.']);
    expect(code).toBe(2);
    expect(`${out}${err}`).toMatch(/ports\[0\]\.adapters\[0\]\.adapter.*npt-elbow/s);
  });

  it('says what would join a port to an end', async () => {
    await using scratch = await scratchFolder();
    await scratch.write(onElbow([]));
    const { out } = await hosewright(scratch.folder, ['lay', '.']);
    expect(out).toMatch(/needs an adapter on the port, such as npt-elbow/);
  });
});
