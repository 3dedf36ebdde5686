/**
 * The menu in the language of the window in front.
 *
 * Scanners send control characters as Ctrl and a letter or a bracket, and codes as Alt and digits, so no such key is taken: what
 * has a key has one of the function keys. On a Mac nobody scans with the command key, so its usual keys stay.
 */
import type { MenuItemConstructorOptions } from 'electron';
import type { Words } from '../src/host/words.ts';
import { type Link, links } from './external-links.ts';
import { kioskKey } from './kiosk.ts';

export interface MenuActs {
  openDesk(): void;
  print(): void;
  loadAnew(): void;
  fillScreen(): void;
  openLink(link: Link): void;
  showAbout(): void;
  end(): void;
}

type Item = MenuItemConstructorOptions;

const line: Item = { type: 'separator' };

/** A role whose usual key the system may show and the page still gets. */
const role = (name: NonNullable<Item['role']>, label: string, isMac: boolean): Item => ({
  role: name,
  label,
  registerAccelerator: isMac,
});

export const menuTemplate = (words: Words, acts: MenuActs, platform: NodeJS.Platform): Item[] => {
  const isMac = platform === 'darwin';
  const of = (name: NonNullable<Item['role']>, label: string): Item => role(name, label, isMac);
  const about: Item = { label: words('menu-about'), click: acts.showAbout };
  const end: Item = { label: words('menu-end'), click: acts.end, ...(isMac ? { accelerator: 'Cmd+Q' } : {}) };
  const ofProgram: Item = {
    label: 'SRL Bench',
    submenu: [
      about,
      line,
      of('hide', words('menu-hide')),
      of('hideOthers', words('menu-hide-others')),
      line,
      end,
    ],
  };
  const file: Item = {
    label: words('menu-file'),
    submenu: [
      { label: words('menu-desk'), accelerator: 'F9', click: acts.openDesk },
      { label: words('menu-print'), accelerator: 'F8', click: acts.print },
      ...(isMac ? [] : [line, end]),
    ],
  };
  const edit: Item = {
    label: words('menu-edit'),
    submenu: [
      of('undo', words('menu-undo')),
      of('redo', words('menu-redo')),
      line,
      of('cut', words('menu-cut')),
      of('copy', words('menu-copy')),
      of('paste', words('menu-paste')),
      of('selectAll', words('menu-select-all')),
    ],
  };
  const view: Item = {
    label: words('menu-view'),
    submenu: [
      { label: words('menu-load-anew'), accelerator: 'F5', click: acts.loadAnew },
      line,
      of('resetZoom', words('menu-usual-size')),
      of('zoomIn', words('menu-larger')),
      of('zoomOut', words('menu-smaller')),
      line,
      { label: words('menu-kiosk', { key: kioskKey }), accelerator: 'F11', click: acts.fillScreen },
    ],
  };
  const window: Item = {
    label: words('menu-window'),
    submenu: [of('minimize', words('menu-minimise')), of('close', words('menu-close'))],
  };
  const help: Item = {
    label: words('menu-help'),
    submenu: [
      ...links.map((link): Item => ({ label: words(link.name), click: () => acts.openLink(link) })),
      ...(isMac ? [] : [line, about]),
    ],
  };
  return [...(isMac ? [ofProgram] : []), file, edit, view, window, help];
};
