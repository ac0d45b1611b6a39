import { contextBridge, type IpcRendererEvent, ipcRenderer } from 'electron';
import { MENU_CHANNEL, TASK_CHANNELS } from '../../shared/desktop/channels.ts';
import { type DesktopApi, MENU_COMMANDS } from '../../shared/desktop/contract.ts';

// One narrow function for each task: neither the channel's name nor the event object ever reaches the page.
const api: DesktopApi = {
  openGiven: () => ipcRenderer.invoke(TASK_CHANNELS.openGiven),
  openDemo: () => ipcRenderer.invoke(TASK_CHANNELS.openDemo),
  exampleParts: () => ipcRenderer.invoke(TASK_CHANNELS.exampleParts),
  taken: () => ipcRenderer.invoke(TASK_CHANNELS.taken),
  beginNew: () => ipcRenderer.invoke(TASK_CHANNELS.beginNew),
  chooseProject: () => ipcRenderer.invoke(TASK_CHANNELS.chooseProject),
  recentProjects: () => ipcRenderer.invoke(TASK_CHANNELS.recentProjects),
  openRecent: (id) => ipcRenderer.invoke(TASK_CHANNELS.openRecent, id),
  forgetRecent: (id) => ipcRenderer.invoke(TASK_CHANNELS.forgetRecent, id),
  chooseFiles: () => ipcRenderer.invoke(TASK_CHANNELS.chooseFiles),
  saveProject: (projectText, added, changed) =>
    ipcRenderer.invoke(TASK_CHANNELS.saveProject, projectText, added, changed),
  saveFile: (name, bytes) => ipcRenderer.invoke(TASK_CHANNELS.saveFile, name, bytes),
  saveFiles: (files) => ipcRenderer.invoke(TASK_CHANNELS.saveFiles, files),
  onMenu: (listener) => {
    const hear = (_event: IpcRendererEvent, said: unknown): void => {
      const command = MENU_COMMANDS.find((known) => known === said);
      if (command !== undefined) listener(command);
    };
    ipcRenderer.on(MENU_CHANNEL, hear);
    return () => void ipcRenderer.off(MENU_CHANNEL, hear);
  },
};

contextBridge.exposeInMainWorld('hosewrightDesktop', api);
