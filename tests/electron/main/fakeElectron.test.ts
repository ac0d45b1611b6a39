import { expectTypeOf, test } from 'vitest';
import type * as Fake from './fakeElectron.ts';

type Electron = typeof import('electron');
/** What the program imports from `electron`; the fake has it all, by names that Electron has. */
type Used =
  | 'app'
  | 'BrowserWindow'
  | 'contextBridge'
  | 'dialog'
  | 'ipcMain'
  | 'ipcRenderer'
  | 'Menu'
  | 'protocol'
  | 'session';

test('the fake has the names that Electron has', () => {
  expectTypeOf<Used>().toExtend<keyof Electron>();
  expectTypeOf<Used>().toExtend<keyof typeof Fake>();
  expectTypeOf<keyof typeof Fake.ipcMain>().toExtend<keyof Electron['ipcMain']>();
  expectTypeOf<keyof typeof Fake.dialog>().toExtend<keyof Electron['dialog']>();
  expectTypeOf<keyof typeof Fake.protocol>().toExtend<keyof Electron['protocol']>();
  expectTypeOf<keyof typeof Fake.contextBridge>().toExtend<keyof Electron['contextBridge']>();
  expectTypeOf<keyof typeof Fake.session.defaultSession>().toExtend<keyof Electron['session']['defaultSession']>();
  expectTypeOf<keyof typeof Fake.app>().toExtend<keyof Electron['app']>();
  expectTypeOf<keyof typeof Fake.Menu>().toExtend<keyof Electron['Menu']>();
});
