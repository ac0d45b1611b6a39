export const WINDOW_SCHEME = 'app';
export const WINDOW_HOST = 'hosewright';
export const WINDOW_ADDRESS = `${WINDOW_SCHEME}://${WINDOW_HOST}/index.html`;

/** Whether an address is one of the window's own pages. */
export function isWindowAddress(address: string): boolean {
  try {
    const url = new URL(address);
    return url.protocol === `${WINDOW_SCHEME}:` && url.host === WINDOW_HOST;
  } catch {
    return false;
  }
}
