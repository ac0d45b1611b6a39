import path from 'node:path';
import { app, BrowserWindow, dialog, ipcMain, Menu, protocol, session } from 'electron';
import { MENU_CHANNEL } from '../../shared/desktop/channels.ts';
import { programFolders } from '../node/programFolders.ts';
import { recentProjects } from '../node/recentProjects.ts';
import { answerAsset } from './answerAsset.ts';
import { answerTasks } from './answerTasks.ts';
import { askBeforeClosing } from './askBeforeClosing.ts';
import { askWithDialogs } from './askPlace.ts';
import { givenProject } from './givenProject.ts';
import { lockDownContents, refusePermissions } from './lockDown.ts';
import { menuTemplate } from './menu.ts';
import { taskHandlers } from './taskHandlers.ts';
import { WINDOW_ADDRESS, WINDOW_SCHEME } from './windowOrigin.ts';

const folders = programFolders(import.meta.dirname);

// Both have to be said before the program is ready.
protocol.registerSchemesAsPrivileged([
  { scheme: WINDOW_SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true } },
]);
app.enableSandbox();

function openWindow(): BrowserWindow {
  const window = new BrowserWindow({
    width: 1400,
    height: 900,
    minWidth: 900,
    minHeight: 600,
    show: false,
    webPreferences: {
      preload: folders.preloadFile,
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      devTools: !app.isPackaged,
    },
  });
  window.once('ready-to-show', () => window.show());
  void window.loadURL(WINDOW_ADDRESS);
  return window;
}

function start(): void {
  refusePermissions(session.defaultSession);
  protocol.handle(WINDOW_SCHEME, (request) => answerAsset(folders.rendererFolder, request.url));
  let window: BrowserWindow;
  const ask = askWithDialogs(dialog, () => window);
  const given = givenProject(process.argv, app.isPackaged, folders.demoProject);
  const recent = recentProjects(path.join(app.getPath('userData'), 'recent-projects.json'), () =>
    new Date().toISOString().slice(0, 10),
  );
  answerTasks(ipcMain, taskHandlers(ask, folders.demoProject, given, recent));
  window = openWindow();
  askBeforeClosing(window, dialog);
  const say = (command: string): void => window.webContents.send(MENU_CHANNEL, command);
  Menu.setApplicationMenu(Menu.buildFromTemplate(menuTemplate(say, !app.isPackaged)));
  app.on('second-instance', () => {
    if (window.isMinimized()) window.restore();
    window.focus();
  });
}

app.on('web-contents-created', (_event, contents) => lockDownContents(contents));
app.on('window-all-closed', () => app.quit());
if (app.requestSingleInstanceLock()) void app.whenReady().then(start);
else app.quit();
