import { readAsset, WINDOW_HEADERS } from '../node/windowAssets.ts';
import { isWindowAddress } from './windowOrigin.ts';

/** Answers the window's own scheme from the built window's folder, and from nowhere else. */
export async function answerAsset(rendererFolder: string, address: string): Promise<Response> {
  if (!isWindowAddress(address)) return new Response('403\n', { status: 403, headers: WINDOW_HEADERS });
  const asset = await readAsset(rendererFolder, new URL(address).pathname);
  return new Response(asset.bytes.slice(), {
    status: asset.status,
    headers: { ...WINDOW_HEADERS, 'content-type': asset.type },
  });
}
