/**
 * The project named on the command line: the first word that is neither an option nor the folder of the program itself,
 * which stands first when the program is started unpackaged (`electron . PROJECT`).
 */
export function givenProject(argv: readonly string[], packaged: boolean): string | undefined {
  return argv.slice(packaged ? 1 : 2).find((word) => !word.startsWith('-'));
}
