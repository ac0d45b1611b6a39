import { bad, type Result } from '../../base/result.ts';
import { stopIfCancelled, UNWATCHED, type Watch } from '../../base/watch.ts';
import { asProblems, assembleMesh } from './assembleMesh.ts';
import { isGlb } from './gltfText.ts';
import type { ImportedMesh, RawResult } from './importedMesh.ts';
import { isPly } from './plyHeader.ts';
import { readGltf } from './readGltf.ts';
import { looksLikeObj, readObj } from './readObj.ts';
import { readPly } from './readPly.ts';
import { looksLikeTextStl, readStl } from './readStl.ts';
import { hasBinaryStlSize } from './stlBinary.ts';
import { textOf } from './textCursor.ts';

/**
 * Opens a mesh file: STL and PLY (binary and text), OBJ, GLB, and glTF with its buffers inside. What it holds decides, its
 * extension only where that says nothing. `fileName` names the file in problems and a part that has no name of its own.
 * Refused with a sentence that says what is wrong, or opened with warnings about what was left out or mended.
 */
export async function openMesh(
  fileName: string,
  bytes: Uint8Array,
  watch: Watch = UNWATCHED,
): Promise<Result<ImportedMesh>> {
  const read = await readAny(fileName, bytes);
  if ('refusal' in read) return bad(asProblems(fileName, [read.refusal]));
  stopIfCancelled(watch);
  return assembleMesh(fileName, read.raw, watch);
}

async function readAny(fileName: string, bytes: Uint8Array): Promise<RawResult> {
  if (bytes.length === 0) return { refusal: 'The file is empty.' };
  const stranger = strangerIn(bytes);
  if (stranger !== undefined) return { refusal: stranger };
  const name = baseNameOf(fileName);
  if (isGlb(bytes) || startsWith(bytes, '{')) return readGltf(bytes);
  if (hasBinaryStlSize(bytes) || looksLikeTextStl(bytes)) return readStl(bytes, name);
  if (isPly(bytes)) return readPly(bytes, name);
  if (looksLikeObj(bytes)) return readObj(bytes, name);
  return readByExtension(fileName, bytes, name);
}

async function readByExtension(fileName: string, bytes: Uint8Array, name: string): Promise<RawResult> {
  const extension = /\.([^./\\]*)$/.exec(fileName)?.[1]?.toLowerCase() ?? '';
  if (extension === 'stl') return readStl(bytes, name);
  if (extension === 'obj') return readObj(bytes, name);
  if (extension === 'glb' || extension === 'gltf')
    return { refusal: 'The file is no glTF: it begins neither as a GLB nor as JSON.' };
  return { refusal: 'The file is no mesh that can be read. Export it as STL, PLY, OBJ or GLB.' };
}

/** Formats known by their first bytes that are not read, with what to do instead. */
const STRANGERS: readonly (readonly [string, string])[] = [
  ['PK\x03\x04', 'The file is a ZIP archive or a 3MF, which cannot be read yet. Export it as STL, PLY, OBJ or GLB.'],
  ['ISO-10303-21', 'The file is a STEP, which cannot be read yet. Export it as STL, PLY, OBJ or GLB.'],
];
const UTF16_MARKS = [
  [0xff, 0xfe],
  [0xfe, 0xff],
];

function strangerIn(bytes: Uint8Array): string | undefined {
  if (UTF16_MARKS.some((mark) => mark.every((byte, n) => bytes[n] === byte)) && !hasBinaryStlSize(bytes))
    return 'The file is text in UTF-16. Save it as plain text or UTF-8.';
  return STRANGERS.find(([start]) => startsWith(bytes, start) && !hasBinaryStlSize(bytes))?.[1];
}

/** Whether the first bytes, blanks aside, are this text. */
function startsWith(bytes: Uint8Array, text: string): boolean {
  return textOf(bytes.subarray(0, text.length + 64))
    .trimStart()
    .startsWith(text);
}

/** The file's name without folders and extension. */
function baseNameOf(fileName: string): string {
  const last = fileName.split(/[/\\]/).pop() ?? '';
  return last.replace(/\.[^.]*$/, '') || last;
}
