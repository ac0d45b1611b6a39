const PLAIN_KEY = /^[A-Za-z_][A-Za-z0-9_]*$/;

/** A path as a builder reads it: `runs[3].slack`. Keys that are not plain words stand in brackets and quotes. */
export function formatPath(path: readonly PropertyKey[]): string {
  let text = '';
  for (const step of path) {
    if (typeof step === 'number') text += `[${step}]`;
    else if (PLAIN_KEY.test(String(step))) text += text === '' ? String(step) : `.${String(step)}`;
    else text += `[${JSON.stringify(String(step))}]`;
  }
  return text;
}
