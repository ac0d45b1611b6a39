import { KEY_ACTIONS, type KeyAction, type KeyPress } from './keys.ts';

/** What has the focus while a key is pressed: a field that takes letters, one that arrows move, or neither. */
export type KeyField = 'typed' | 'moved' | 'none';

/** What a key does in the window: one that belongs to the field with the focus does nothing else. */
export function actionFor(press: KeyPress, field: KeyField): KeyAction | undefined {
  const isForAny = press.ctrlKey || press.metaKey || press.key === 'Escape';
  const isForField = field === 'typed' || (field === 'moved' && press.key.startsWith('Arrow'));
  return isForField && !isForAny ? undefined : KEY_ACTIONS.find((action) => action.fits(press));
}
