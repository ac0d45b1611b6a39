import { mkdtemp, readFile, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Project } from '../../shared/document/project/schema.ts';
import { smallBay } from '../electron/smallBay.ts';
import { expect, test } from './window.ts';

const ADAPTERS = [
  'id,name,form,port_seat,port_dash,seat,dash,bend_angle_deg,port_to_bend_mm,bend_to_seat_mm,branch_to_seat_mm,turning,diameter_mm,material,provenance,source',
  'npt-elbow,Test taper elbow,elbow,npt-1-4,6,flare-37,6,90,20,24,,taper,20,steel,example,invented for a test',
  'union-tee,Test tee,tee,flare-37,6,flare-37,6,0,22,22,26,settable,20,steel,example,invented for a test',
  '',
].join('\n');

/** The small rig with its left hose off a taper elbow that looks up, tight anywhere in 40 degrees. */
function onTaper() {
  const port = { up: [0, 0, 1], dash: 6 };
  const adapters = [{ adapter: 'npt-elbow', clockRangeDeg: [-20, 20] }];
  return [
    { ...port, id: 'left', name: 'Left', seatPoint: [0, 0, 60], axis: [1, 0, 0], seat: 'npt-1-4', adapters },
    { ...port, id: 'right', name: 'Right', seatPoint: [520, 0, 80], axis: [-1, 0, 0], seat: 'flare-37' },
  ];
}

const rig = test.extend<{ changes: Readonly<Record<string, unknown>>; folder: string }>({
  changes: [{}, { option: true }],
  folder: async ({ changes }, use) => {
    const folder = await mkdtemp(path.join(tmpdir(), 'hosewright-adapters-'));
    const tables = { hoses: ['hoses.csv'], ends: ['ends.csv'], adapters: ['adapters.csv'] };
    for (const [name, content] of Object.entries({ ...smallBay({ tables, ...changes }), 'adapters.csv': ADAPTERS }))
      await writeFile(path.join(folder, name), content);
    await use(folder);
  },
  project: async ({ folder }, use) => use(folder),
  viewport: { width: 1100, height: 700 },
});

rig('adapters are put on a port, turned, taken back and saved', async ({ opened: { page }, folder }) => {
  await page
    .getByRole('button', { name: /^Ports/ })
    .first()
    .click();
  const ports = page.getByRole('list', { name: 'Ports' });
  await ports.getByRole('button', { name: /Left/ }).click();
  const card = page.getByRole('region', { name: 'Adapters on Left' });
  await expect(card.getByText('None: the hose end goes straight on this port.')).toBeVisible();

  await page.getByLabel('Thread or seat').selectOption('npt-1-4');
  await card.getByRole('button', { name: 'Add an adapter' }).click();
  await expect(card.getByLabel('Adapter 1', { exact: true })).toHaveValue('npt-elbow');
  // A taper has a range to begin with; the seat it offers is 20 mm out and 24 mm aside of the port's own: 31.2 mm.
  await expect(card.getByLabel('Tight from', { exact: true })).toHaveValue('-45');
  await expect(card.getByRole('status')).toContainText('31.2 mm from the port’s own seat');
  await card.getByRole('checkbox').uncheck();
  await card.getByLabel('Clock of adapter 1', { exact: true }).fill('30');
  await page.keyboard.press('Enter');

  await card.getByRole('button', { name: 'Add another' }).click();
  await expect(card.getByLabel('Adapter 2', { exact: true })).toHaveValue('union-tee');
  await card.getByRole('button', { name: 'Move Test tee nearer to the part' }).click();
  await expect(card.getByLabel('Adapter 1', { exact: true })).toHaveValue('union-tee');
  await page.keyboard.press('Control+z');
  await expect(card.getByLabel('Adapter 1', { exact: true })).toHaveValue('npt-elbow');
  await card.getByRole('button', { name: 'Port on its other outlet' }).click();
  await expect(ports.getByRole('button', { name: /^3 Left, branch/ })).toHaveAttribute('aria-expanded', 'true');

  await page.keyboard.press('Control+s');
  await expect(page.getByText('Saved: project')).toBeVisible();
  const saved = JSON.parse(await readFile(path.join(folder, 'project.json'), 'utf8')) as Project;
  const elbow = { adapter: 'npt-elbow', outlet: 'straight', clockDeg: 30 };
  expect(saved.ports.map((p) => p.adapters)).toEqual([
    [elbow, { adapter: 'union-tee', outlet: 'straight', clockDeg: 0 }],
    undefined,
    [elbow, { adapter: 'union-tee', outlet: 'branch', clockDeg: 0 }],
  ]);
  if (process.env['HOSEWRIGHT_SHOTS'] !== undefined) await page.screenshot({ path: '.tmp/adapters.png' });
});

rig.describe('a run on a taper thread', () => {
  rig.use({ changes: { ports: onTaper() } });

  rig('is told over the whole range of the taper', async ({ opened: { page } }) => {
    await page.getByRole('button', { name: 'Lay this run' }).click();
    const taper = page.getByRole('region', { name: 'Taper threads' });
    await expect(taper.getByText('npt-elbow at END A, -20° to 20°: the same hose at 4 clocks of it.')).toBeVisible({
      timeout: 60_000,
    });
    await expect(taper.getByText('Slack left')).toBeVisible();
    await expect(page.getByText('npt-elbow at 0°')).toBeVisible();
    if (process.env['HOSEWRIGHT_SHOTS'] !== undefined) await page.screenshot({ path: '.tmp/taper.png' });
  });
});
