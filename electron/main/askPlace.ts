import type { BrowserWindow, Dialog } from 'electron';

/** Asks the user for a place on disk; undefined when the dialog is closed. */
export interface AskPlace {
  project(): Promise<string | undefined>;
  files(): Promise<readonly string[] | undefined>;
  folder(title: string): Promise<string | undefined>;
  saveAs(name: string): Promise<string | undefined>;
}

/** Asks with the system's own dialogs, in front of the window. */
export function askWithDialogs(dialog: Dialog, window: () => BrowserWindow): AskPlace {
  async function open(options: Electron.OpenDialogOptions): Promise<readonly string[] | undefined> {
    const { canceled, filePaths } = await dialog.showOpenDialog(window(), options);
    return canceled || filePaths.length === 0 ? undefined : filePaths;
  }
  return {
    project: async () => {
      const filters = [{ name: 'Hosewright project', extensions: ['json'] }];
      return (await open({ title: 'Open a project', properties: ['openFile'], filters }))?.[0];
    },
    files: () => open({ title: 'Add meshes or tables', properties: ['openFile', 'multiSelections'] }),
    folder: async (title) => (await open({ title, properties: ['openDirectory', 'createDirectory'] }))?.[0],
    saveAs: async (name) => {
      const { canceled, filePath } = await dialog.showSaveDialog(window(), { defaultPath: name });
      return canceled || filePath === '' ? undefined : filePath;
    },
  };
}
