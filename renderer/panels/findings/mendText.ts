import { CHECK_WORDS } from '../../../shared/document/wording/findingWords.ts';

/** A change as the head of its row. */
export function titleOf(words: string): string {
  return words.replace(/,$/, '');
}

/** What a change cures, as a line of its own. */
export function curedWords(words: string): string {
  if (words === `cures: ${CHECK_WORDS.laid.toLowerCase()}`) return 'A way that keeps all that is asked of the hose';
  const plain = words.replace(/^(cures|makes less grave): /, '$1 ');
  return `${plain.charAt(0).toUpperCase()}${plain.slice(1)}`;
}
