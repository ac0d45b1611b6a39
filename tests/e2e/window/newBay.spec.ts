import { expect, test } from '../window.ts';
import { clickPlace, dropFile, placePx, rig, rigMesh, typeInto } from './smallRig.ts';

test('a scan is chosen and its four questions answered by keyboard alone', async ({ opened: { page } }) => {
  const choosing = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'New bay from a scan' }).focus();
  await page.keyboard.press('Enter');
  await (await choosing).setFiles([{ name: 'my rig.stl', mimeType: 'model/stl', buffer: rigMesh() }]);

  await expect(page.getByRole('heading', { name: 'How large is it?' })).toBeFocused();
  await page.keyboard.press('Tab');
  await expect(page.getByRole('radio', { name: 'millimetres' })).toBeFocused();
  await page.keyboard.press('ArrowDown');
  await expect(page.getByRole('radio', { name: 'centimetres' })).toBeChecked();
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('Tab');
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type('Keyboard rig');
  await page.keyboard.press('Enter');

  await expect(page.getByRole('heading', { name: 'Which way is up?' })).toBeFocused();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'How far may the scan be off?' })).toBeFocused();
  await page.keyboard.press('Tab');
  await page.keyboard.press('ArrowDown');
  await expect(page.getByRole('radio', { name: 'Phone or tablet' })).toBeChecked();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'What lies in the drawer?' })).toBeFocused();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');

  await expect(page.getByRole('heading', { name: 'Keyboard rig', level: 1 })).toBeVisible();
  await page.keyboard.press('1');
  await expect(page.getByText(/scan good to 10\.0 mm/)).toBeVisible();
});

test('a scan is dropped; what is no mesh says so and what to do; leaving keeps the bench', async ({ opened }) => {
  const { page } = opened;
  await dropFile(page, 'letter.txt', Buffer.from('Dear sir, here is no mesh.'));
  const note = page.getByRole('alert');
  await expect(note).toContainText('letter.txt');
  await expect(note).toContainText(/STL/);
  await expect(page.getByRole('button', { name: 'Open the example bay' })).toBeVisible();

  await dropFile(page, 'dropped.stl', rigMesh());
  await expect(page.getByText('dropped.stl · 24 triangles')).toBeVisible();
  await page.getByRole('button', { name: 'Next' }).click();
  await page.getByRole('button', { name: 'Back' }).click();
  await page.getByRole('button', { name: 'Leave it' }).click();
  await expect(page.getByRole('button', { name: 'Open the example bay' })).toBeVisible();
});

rig.describe('a bay on the bench', () => {
  rig.use({ project: async ({ folder }, use) => use(folder), contextOptions: { reducedMotion: 'reduce' } });

  rig('parts are made hot, put on a body that rolls, and every step is taken back', async ({ opened: { page } }) => {
    const undo = page.getByRole('button', { name: 'Undo' });
    await page.getByRole('button', { name: 'Bay', exact: true }).click();
    await page.getByRole('button', { name: 'New skin' }).click();
    const stating = page.getByRole('region', { name: 'New skin' });
    await expect(stating.getByRole('button', { name: 'Add this skin' })).toBeDisabled();
    await typeInto(stating.getByRole('textbox', { name: 'Name' }), 'Downpipe');
    await typeInto(stating.getByRole('textbox', { name: 'Surface temperature' }), '550');
    await stating.getByRole('button', { name: 'Add this skin' }).click();
    await clickPlace(page, [300, 0, 20]);
    const skin = page.getByRole('region', { name: 'Skin: Downpipe' });
    await expect(skin.getByText('box1')).toBeVisible();
    await expect(page.getByRole('list', { name: 'Skins' })).toContainText('hot');
    await page.keyboard.press('Escape');

    await typeInto(page.getByRole('textbox', { name: 'New body' }), 'Engine');
    await page.getByRole('button', { name: 'Add it and click its parts' }).click();
    await clickPlace(page, [300, 0, 20]);
    await page.keyboard.press('Escape');
    const bodies = page.getByRole('region', { name: 'Bodies' });
    await expect(bodies.getByText('1 part, does not move')).toBeVisible();
    await bodies.getByText('1 part, does not move').click();
    await bodies.getByRole('button', { name: 'It moves' }).click();
    await typeInto(bodies.getByRole('textbox', { name: 'Roll, about x, most' }), '3');
    await expect(bodies.getByText('1 part, moves')).toBeVisible();

    for (const [gone, still] of [
      [bodies.getByText('1 part, moves'), bodies.getByText('Engine', { exact: true })],
      [bodies.getByText('Engine', { exact: true }), skin],
    ] as const) {
      while (await gone.isVisible()) await undo.click();
      await expect(still).toBeVisible();
    }
    while (await undo.isEnabled()) await undo.click();
    await expect(skin).toBeHidden();
    await expect(page.getByRole('list', { name: 'Skins' })).not.toContainText('hot');
  });

  rig('a part that is taken off is looked through, and is there again', async ({ opened: { page } }) => {
    await page.getByRole('button', { name: 'Bay', exact: true }).click();
    await placePx(page, [300, 0, 20]);
    await page.keyboard.press('Shift+M');
    const inHand = page.getByRole('region', { name: 'In the hand' });
    const point = async (at: readonly [number, number, number]): Promise<void> => {
      const [x, y] = await placePx(page, at);
      await page.mouse.move(x + 3, y + 3);
      await page.mouse.move(x, y);
    };
    /** A pointer that rests tells a tool taken up after it nothing: it is moved until the window has seen it. */
    const sees = (at: readonly [number, number, number], part: string): Promise<void> =>
      expect(async () => {
        await point(at);
        await expect(inHand).toContainText(part, { timeout: 1000 });
      }).toPass({ timeout: 20_000 });
    const top = [300, 0, 20] as const;
    await sees(top, 'box1');
    await page.keyboard.press('Escape');

    const post = page.getByRole('group', { name: 'box1' });
    await post.getByRole('radio', { name: 'off' }).check({ force: true });
    await page.keyboard.press('Shift+M');
    await sees(top, 'box0');
    await page.keyboard.press('Escape');
    await post.getByRole('radio', { name: 'on' }).check({ force: true });
    await page.keyboard.press('Shift+M');
    await sees(top, 'box1');
  });

  rig('what stands alone in the box becomes a part of its own, is made hot, and is put back', async ({ opened }) => {
    const { page } = opened;
    await page.getByRole('button', { name: 'Bay', exact: true }).click();
    const pieces = page.getByRole('region', { name: 'Parts cut out of the scan' });
    await pieces.getByRole('button', { name: 'Cut the bay open' }).click();
    const card = page.getByRole('region', { name: 'The bay cut open' });
    // Over the floor plate, which ends at z -10, only the post stays.
    await card.getByRole('slider', { name: 'z from' }).fill('-9');
    const name = card.getByRole('textbox', { name: 'Make what stays a part, called' });
    await name.fill('box1');
    await expect(card.getByText('Another part is called so.')).toBeVisible();
    await name.fill('Post');
    await card.getByRole('button', { name: 'Make it a part' }).click();
    await expect(page.getByRole('group', { name: 'Post', exact: true })).toBeVisible();
    await expect(pieces.getByRole('list', { name: 'Pieces cut out' })).toContainText('Post');
    await pieces.getByRole('button', { name: 'Put Post back' }).click();
    await expect(page.getByRole('group', { name: 'Post', exact: true })).toBeHidden();
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect(page.getByRole('group', { name: 'Post', exact: true })).toBeVisible();
  });

  rig('a known length sets the scale, three places the level, and both are taken back', async ({ opened }) => {
    const { page } = opened;
    const undo = page.getByRole('button', { name: 'Undo' });
    await page.getByRole('button', { name: 'Bay', exact: true }).click();
    const square = page.getByRole('region', { name: 'Scale and level' });
    await square.getByRole('button', { name: 'Measure a known length' }).click();
    await clickPlace(page, [0, -100, -10]);
    await clickPlace(page, [600, -100, -10]);
    const inHand = page.getByRole('region', { name: 'In the hand' });
    // Clicked to a pixel of about 1 mm.
    await expect(inHand).toContainText(/(59[5-9]|60[0-5])(\.\d)? mm/);
    const truth = inHand.getByRole('textbox', { name: 'In truth it is' });
    await truth.fill('24-3/8"');
    await truth.press('Enter');
    await expect(truth).toHaveValue('619.1');
    await truth.fill('24 3/8 pounds');
    await expect(inHand.locator('.field-wrong')).toBeVisible();
    await truth.fill('620mm');
    await truth.press('Enter');
    await expect(inHand).toContainText(/The scan measures (2|3|4)\.\d\d % short/);
    await inHand.getByRole('button', { name: 'Set the scale by it' }).click();
    await expect(square).toContainText(/Scaled by 1\.0[2-4]/);
    await undo.click();
    await expect(square).toContainText('As the file has it');

    await square.getByRole('button', { name: 'Level the bay' }).click();
    for (const at of [
      [0, -120, -10],
      [600, -120, -10],
      [0, 120, -10],
    ] as const)
      await clickPlace(page, at);
    await expect(inHand).toContainText('The face lies 0');
    await inHand.getByRole('button', { name: 'Turn the bay so that it is level' }).click();
    await expect(square).toContainText('Levelled by a face of the bay');
    await undo.click();
    await expect(square).toContainText('The file’s own up is taken for level');
    await expect(undo).toBeDisabled();
  });
});
