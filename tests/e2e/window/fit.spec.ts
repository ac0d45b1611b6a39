import { expect } from '../window.ts';
import { rig } from './smallRig.ts';

const PORT = { up: [0, 0, 1], seat: 'flare-37' };

rig.use({
  project: async ({ folder }, use) => use(folder),
  changes: {
    ports: [
      { ...PORT, id: 'left', name: 'Left', seatPoint: [0, 0, 60], axis: [1, 0, 0], dash: 8 },
      { ...PORT, id: 'right', name: 'Right', seatPoint: [600, 0, 60], axis: [-1, 0, 0], dash: 6 },
    ],
  },
});

rig('a hose and an end that do not fit stand in the list with the reason why', async ({ opened: { page } }) => {
  const apart = (name: string) => page.getByRole('combobox', { name }).locator('optgroup option');
  await expect(apart('Hose')).toHaveText('Test hose 6 (-6): -6, the port is -8');
  await expect(apart('END A at Left')).toHaveText(
    'Test end 6: needs an adapter: it is -6 37° flare, the port -8 37° flare',
  );
  await expect(page.getByRole('combobox', { name: 'END B at Right' }).locator('option')).toHaveText('Test end 6');
  await expect(apart('END B at Right')).toHaveCount(0);
});
