import type { IpcMain, IpcMainInvokeEvent } from 'electron';
import { type DesktopTask, TASK_CHANNELS } from '../../shared/desktop/channels.ts';
import type { DesktopApi } from '../../shared/desktop/contract.ts';
import { isWindowAddress } from './windowOrigin.ts';

/** The tasks as main does them: whatever a page sends is unknown until looked at. */
export type TaskHandlers = {
  readonly [Task in DesktopTask]: (...args: unknown[]) => ReturnType<DesktopApi[Task]>;
};

/** Answers each task, for the top frame of the window's own page only. */
export function answerTasks(ipcMain: Pick<IpcMain, 'handle'>, handlers: TaskHandlers): void {
  for (const task of Object.keys(TASK_CHANNELS) as DesktopTask[]) {
    ipcMain.handle(TASK_CHANNELS[task], (event, ...args: unknown[]) => {
      refuseStrangers(event);
      return handlers[task](...args);
    });
  }
}

function refuseStrangers({ senderFrame }: IpcMainInvokeEvent): void {
  if (senderFrame === null || senderFrame.parent !== null || !isWindowAddress(senderFrame.url)) {
    throw new Error('answerTasks: asked by a page that is not the window');
  }
}
