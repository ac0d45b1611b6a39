import regularUrl from 'dejavu-fonts-ttf/ttf/DejaVuSans.ttf?url';
import boldUrl from 'dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf?url';

/** The papers' typefaces as TrueType bytes, from the window's own bundle: any glyph a paper shows is in them. */
export async function paperFonts(): Promise<{ readonly regular: Uint8Array; readonly bold: Uint8Array }> {
  const [regular, bold] = await Promise.all([bytesAt(regularUrl), bytesAt(boldUrl)]);
  return { regular, bold };
}

async function bytesAt(url: string): Promise<Uint8Array> {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`paperFonts: ${url} answered ${response.status}`);
  return new Uint8Array(await response.arrayBuffer());
}
