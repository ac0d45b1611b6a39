import type { BrowserWindow, Dialog } from 'electron';

/** Answers of the question, in the order of its buttons. */
const CHOICES = ['Stay', 'Close without saving'];
const CLOSE = 1;

/** A page with changes that are not saved holds its window back; the user says whether it closes all the same. */
export function askBeforeClosing(window: BrowserWindow, dialog: Pick<Dialog, 'showMessageBoxSync'>): void {
  window.webContents.on('will-prevent-unload', (event) => {
    const chosen = dialog.showMessageBoxSync(window, {
      type: 'question',
      message: 'The project has changes that are not saved.',
      buttons: CHOICES,
      defaultId: 0,
      cancelId: 0,
    });
    // For this event to prevent means to let the window go.
    if (chosen === CLOSE) event.preventDefault();
  });
}
