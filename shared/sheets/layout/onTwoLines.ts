/** A length in both units for a narrow cell: the inches in their brackets go under the millimetres, unbroken. */
export function onTwoLines(bothUnits: string): string {
  return bothUnits
    .replace(' (', '\n(')
    .replaceAll(' in)', '\u00a0in)')
    .replace(/(\d) (\d+\/)/, '$1\u00a0$2');
}
