/**
 * Names as given, blanks at the ends taken off, an empty one named after its place (`part 3`), and a repeated one
 * numbered (`pipe`, `pipe 2`, `pipe 3`) so that no two are alike.
 */
export function uniqueNames(names: readonly string[]): string[] {
  const wanted = names.map((name, n) => name.trim() || `part ${n + 1}`);
  const taken = new Set<string>(wanted);
  const seen = new Set<string>();
  const nextNumber = new Map<string, number>();
  return wanted.map((name) => {
    let unique = name;
    let number = nextNumber.get(name) ?? 2;
    // A number that the file itself uses for another part stays with that part.
    while (seen.has(unique) || (unique !== name && taken.has(unique))) unique = `${name} ${number++}`;
    nextNumber.set(name, number);
    seen.add(unique);
    return unique;
  });
}
