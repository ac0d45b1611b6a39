import { EventEmitter } from 'node:events';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

/**
 * Stands in for the `electron` module where there is no runtime. It keeps the contracts that mistakes hide behind: what
 * crosses between page and main is copied, a second handler on one channel throws, an unknown channel rejects. Its
 * exports are held against Electron's own types in `fakeElectron.test.ts`.
 */
type Handler = (event: unknown, ...args: unknown[]) => unknown;

export interface Frame {
  readonly url: string;
  readonly parent: Frame | null;
}

class FakeContents extends EventEmitter {
  sent: unknown[][] = [];
  openHandler: (() => { action: string }) | undefined;
  setWindowOpenHandler(handler: () => { action: string }): void {
    this.openHandler = handler;
  }
  send(channel: string, ...args: unknown[]): void {
    this.sent.push([channel, ...structuredClone(args)]);
  }
}

export const windows: BrowserWindow[] = [];
export class BrowserWindow extends EventEmitter {
  readonly webContents = new FakeContents();
  readonly options: { readonly webPreferences: Readonly<Record<string, unknown>> };
  address = '';
  shown = false;
  constructor(options: BrowserWindow['options']) {
    super();
    this.options = options;
    windows.push(this);
    app.emit('web-contents-created', {}, this.webContents);
  }
  async loadURL(address: string): Promise<void> {
    this.address = address;
    queueMicrotask(() => this.emit('ready-to-show'));
  }
  show(): void {
    this.shown = true;
  }
  focus(): void {}
  isMinimized(): boolean {
    return false;
  }
  restore(): void {}
}

/** What was called and when, in order. */
export const calls: string[] = [];

/** Where the program keeps what is the user's own. */
const userFolder = mkdtempSync(path.join(tmpdir(), 'hosewright-user-'));

class FakeApp extends EventEmitter {
  readonly isPackaged = true;
  enableSandbox(): void {
    calls.push('enableSandbox');
  }
  requestSingleInstanceLock(): boolean {
    calls.push('requestSingleInstanceLock');
    return true;
  }
  async whenReady(): Promise<void> {
    calls.push('ready');
  }
  quit(): void {
    calls.push('quit');
  }
  getPath(name: string): string {
    return path.join(userFolder, name);
  }
}
export const app = new FakeApp();

export const handlers = new Map<string, Handler>();
export const ipcMain = {
  handle(channel: string, handler: Handler): void {
    if (handlers.has(channel)) throw new Error(`Attempted to register a second handler for '${channel}'`);
    handlers.set(channel, handler);
  },
};

/** Asks main as a page in `frame` would. */
export async function asked(frame: Frame | null, channel: string, ...args: unknown[]): Promise<unknown> {
  const handler = handlers.get(channel);
  if (handler === undefined) throw new Error(`No handler registered for '${channel}'`);
  return structuredClone(await handler({ senderFrame: frame }, ...structuredClone(args)));
}

export const schemes: unknown[] = [];
export const protocols = new Map<string, (request: { url: string }) => Promise<Response>>();
export const protocol = {
  registerSchemesAsPrivileged(wanted: unknown[]): void {
    calls.push('registerSchemesAsPrivileged');
    schemes.push(...wanted);
  },
  handle(scheme: string, answer: (request: { url: string }) => Promise<Response>): void {
    protocols.set(scheme, answer);
  },
};

export const permissions: Record<string, (...args: never[]) => unknown> = {};
export const session = {
  defaultSession: {
    setPermissionRequestHandler: (handler: never) => {
      permissions['request'] = handler;
    },
    setPermissionCheckHandler: (handler: never) => {
      permissions['check'] = handler;
    },
    setDevicePermissionHandler: (handler: never) => {
      permissions['device'] = handler;
    },
  },
};

/** What the user answers in the next dialogs; nothing = closes them. */
export const answers: { open: string[]; save: string; button: number } = { open: [], save: '', button: 0 };
export const dialog = {
  showOpenDialog: async () => ({ canceled: answers.open.length === 0, filePaths: answers.open }),
  showMessageBoxSync: () => answers.button,
  showSaveDialog: async () => ({ canceled: answers.save === '', filePath: answers.save }),
};

export interface FakeMenuItem {
  readonly label?: string;
  readonly role?: string;
  readonly submenu?: readonly FakeMenuItem[];
  readonly click?: () => void;
}
export const menus: (readonly FakeMenuItem[])[] = [];
export const Menu = {
  buildFromTemplate: (template: readonly FakeMenuItem[]) => template,
  setApplicationMenu: (menu: readonly FakeMenuItem[]) => void menus.push(menu),
};

export const exposed: Record<string, unknown> = {};
export const contextBridge = {
  exposeInMainWorld(name: string, api: unknown): void {
    exposed[name] = api;
  },
};

/** The window's own page, as main sees who asks. */
export const ownFrame: Frame = { url: 'app://hosewright/index.html', parent: null };
export const ipcRenderer = Object.assign(new EventEmitter(), {
  invoke: (channel: string, ...args: unknown[]) => asked(ownFrame, channel, ...args),
});
