import type { DesktopApi } from '../../shared/desktop/contract.ts';
import { browserDesktop } from './browserDesktop.ts';

declare global {
  interface Window {
    /** Put there by the preload of the Electron shell; absent in a browser. */
    readonly hosewrightDesktop?: DesktopApi;
  }
}

let chosen: DesktopApi | undefined;

/** The shell this window runs in: Electron's where there is one, else the browser with the local server. */
export function desktop(): DesktopApi {
  chosen ??= window.hosewrightDesktop ?? browserDesktop(window);
  return chosen;
}
