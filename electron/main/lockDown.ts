import type { Session, WebContents } from 'electron';
import { isWindowAddress } from './windowOrigin.ts';

/** Keeps a page where it is: no other site, no second window, no embedded view. */
export function lockDownContents(contents: WebContents): void {
  const stay = (event: { preventDefault(): void; readonly url?: string }, address?: string): void => {
    if (!isWindowAddress(event.url ?? address ?? '')) event.preventDefault();
  };
  contents.on('will-navigate', stay);
  contents.on('will-redirect', stay);
  contents.on('will-frame-navigate', stay);
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
}

/** Refuses every permission; by default all would be granted. The program needs none. */
export function refusePermissions(session: Session): void {
  session.setPermissionRequestHandler((_contents, _permission, answer) => answer(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
}
