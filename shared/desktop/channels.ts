import type { DesktopApi } from './contract.ts';

/** A task of the desktop that is asked and answered, as against the menu, which is listened to. */
export type DesktopTask = Exclude<keyof DesktopApi, 'onMenu'>;

/** The channel each task travels on between preload and main. */
export const TASK_CHANNELS: Readonly<Record<DesktopTask, string>> = {
  openGiven: 'hosewright:open-given',
  openDemo: 'hosewright:open-demo',
  exampleParts: 'hosewright:example-parts',
  beginNew: 'hosewright:begin-new',
  taken: 'hosewright:taken',
  chooseProject: 'hosewright:choose-project',
  recentProjects: 'hosewright:recent-projects',
  openRecent: 'hosewright:open-recent',
  forgetRecent: 'hosewright:forget-recent',
  chooseFiles: 'hosewright:choose-files',
  saveProject: 'hosewright:save-project',
  saveFile: 'hosewright:save-file',
  saveFiles: 'hosewright:save-files',
};

export const MENU_CHANNEL = 'hosewright:menu';
