/** The windows of the shell: what they may do, and that they show our page and nothing else. */
import {
  app,
  BrowserWindow,
  type BrowserWindowConstructorOptions,
  type MediaAccessPermissionRequest,
  session,
} from 'electron';
import { pageAddress } from './channel.ts';

export const windowOptions = (preload: string): BrowserWindowConstructorOptions => ({
  width: 1366,
  height: 768,
  minWidth: 1024,
  minHeight: 640,
  title: 'SRL Bench',
  show: false,
  autoHideMenuBar: true,
  webPreferences: {
    preload,
    contextIsolation: true,
    sandbox: true,
    nodeIntegration: false,
    nodeIntegrationInSubFrames: false,
    webSecurity: true,
    webviewTag: false,
    navigateOnDragDrop: false,
    spellcheck: false,
  },
});

/** Opens the window; resolves when its page has come up. */
export const openWindow = async (preload: string): Promise<BrowserWindow> => {
  const window = new BrowserWindow(windowOptions(preload));
  window.once('ready-to-show', () => window.show());
  await window.loadURL(pageAddress);
  return window;
};

/** To be called before the first window: nothing leads away from our page, and of the PC the page is allowed only the camera. */
export const keepWindowsAtHome = (): void => {
  app.on('web-contents-created', (_event, contents) => {
    contents.setWindowOpenHandler(() => ({ action: 'deny' }));
    contents.on('will-navigate', (event) => {
      if (!isOurs(event.url)) event.preventDefault();
    });
    contents.on('will-frame-navigate', (event) => {
      if (!isOurs(event.url) && !(event.isMainFrame === false && event.url.startsWith('blob:')))
        event.preventDefault();
    });
    contents.on('will-redirect', (event) => event.preventDefault());
    contents.on('will-attach-webview', (event) => event.preventDefault());
  });
  session.defaultSession.setPermissionRequestHandler((_contents, permission, decide, details) =>
    decide(permission === 'media' && isOurCamera(details)),
  );
  session.defaultSession.setPermissionCheckHandler(
    (_contents, permission, origin, { mediaType }) =>
      permission === 'media' && mediaType === 'video' && isOurs(`${origin.replace(/\/$/, '')}/`),
  );
};

/** Asked for by the top frame of our page, with no microphone. */
const isOurCamera = (details: Partial<MediaAccessPermissionRequest>): boolean =>
  details.isMainFrame === true &&
  isOurs(details.requestingUrl ?? '') &&
  details.mediaTypes?.length === 1 &&
  details.mediaTypes[0] === 'video';

const isOurs = (address: string): boolean => address.startsWith(pageAddress);
