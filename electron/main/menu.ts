import type { MenuItemConstructorOptions } from 'electron';
import type { MenuCommand } from '../../shared/desktop/contract.ts';

/** The menu: commands for the window, and the system's own entries. `developing` adds the inspector. */
export function menuTemplate(say: (command: MenuCommand) => void, developing: boolean): MenuItemConstructorOptions[] {
  const item = (label: string, accelerator: string, command: MenuCommand): MenuItemConstructorOptions => ({
    label,
    accelerator,
    click: () => say(command),
  });
  return [
    {
      label: '&Project',
      submenu: [
        item('&Open…', 'CmdOrCtrl+O', 'open-project'),
        { label: 'Open the &example bay', click: () => say('open-demo') },
        item('&Save', 'CmdOrCtrl+S', 'save-project'),
        { type: 'separator' },
        { role: 'quit' },
      ],
    },
    {
      label: '&Edit',
      submenu: [
        item('&Undo', 'CmdOrCtrl+Z', 'undo'),
        item('&Redo', 'Shift+CmdOrCtrl+Z', 'redo'),
        { type: 'separator' },
        { role: 'cut' },
        { role: 'copy' },
        { role: 'paste' },
      ],
    },
    {
      label: '&View',
      submenu: [
        { role: 'zoomIn' },
        { role: 'zoomOut' },
        { role: 'resetZoom' },
        { role: 'togglefullscreen' },
        ...(developing ? [{ role: 'toggleDevTools' } as const] : []),
      ],
    },
  ];
}
