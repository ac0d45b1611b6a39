/** A length in both units for a narrow cell: the inches in their brackets go under the millimetres. */
export function onTwoLines(bothUnits: string): string {
  return bothUnits.replace(' (', '\n(');
}
