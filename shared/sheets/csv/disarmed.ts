/** A cell that no spreadsheet runs as a formula: text that begins like one gets a leading apostrophe, numbers stay. */
export function disarmed(text: string): string {
  return /^[=+\-@\t\r]/.test(text) && !/^-?\d+(\.\d+)?$/.test(text) ? `'${text}` : text;
}
