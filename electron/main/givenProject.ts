import type { GivenProject } from '../node/serveWindow.ts';

/**
 * The project named on the command line: the first word that is neither an option nor the folder of the program itself,
 * which stands first when the program is started unpackaged (`electron . PROJECT`); or with `--example` the example.
 */
export function givenProject(
  argv: readonly string[],
  packaged: boolean,
  exampleProject: string,
): GivenProject | undefined {
  const words = argv.slice(packaged ? 1 : 2);
  const place = words.find((word) => !word.startsWith('-'));
  if (place !== undefined) return { place, savesInPlace: true };
  return words.includes('--example') ? { place: exampleProject, savesInPlace: false } : undefined;
}
