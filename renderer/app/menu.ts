import type { DesktopApi, MenuCommand } from '../../shared/desktop/contract.ts';
import type { Bench } from '../state/bench.ts';

/** The shell's menu does what the window's own buttons do. */
export function listenToMenu(shell: DesktopApi, bench: Bench): void {
  const acts: Record<MenuCommand, () => void> = {
    'open-project': () => void bench.openChosen(),
    'open-demo': () => void bench.openDemo(),
    'save-project': () => void bench.save(),
    undo: () => bench.document.undo(),
    redo: () => bench.document.redo(),
  };
  shell.onMenu((command) => acts[command]());
}
