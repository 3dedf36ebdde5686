/** Keeps the windows at our page: nothing leads away from it, nothing is loaded from elsewhere, and nothing of the PC is given to it but the camera. */
import { app, type MediaAccessPermissionRequest, type Session, session } from 'electron';
import { isOurs, pageAddress } from './channel.ts';

/** To be called before the first window. `onLink` is told of an address that the page wanted in a window of its own. */
export const keepWindowsAtHome = (onLink: (address: string) => void): void => {
  app.on('web-contents-created', (_event, contents) => {
    contents.setWindowOpenHandler(({ url }) => {
      onLink(url);
      return { action: 'deny' };
    });
    contents.on('will-navigate', (event) => {
      if (!isOurs(event.url)) event.preventDefault();
    });
    contents.on('will-frame-navigate', (event) => {
      if (!isOurs(event.url) && !(event.isMainFrame === false && event.url.startsWith('blob:')))
        event.preventDefault();
    });
    contents.on('will-redirect', (event) => event.preventDefault());
    contents.on('will-attach-webview', (event) => event.preventDefault());
    contents.on('select-bluetooth-device', (event, _devices, choose) => {
      event.preventDefault();
      choose('');
    });
  });
  trustNoCertificate();
  giveCameraAlone(session.defaultSession);
  giveNoDevice(session.defaultSession);
  loadNothingFromElsewhere(session.defaultSession);
};

/** Nothing of ours is loaded over the network, so whoever presents a certificate is not meant. */
const trustNoCertificate = (): void => {
  app.on('certificate-error', (event, _contents, _address, _error, _certificate, trust) => {
    event.preventDefault();
    trust(false);
  });
  app.on('select-client-certificate', (event, _contents, _address, _certificates, choose) => {
    event.preventDefault();
    choose();
  });
};

const giveCameraAlone = (ours: Session): void => {
  ours.setPermissionRequestHandler((_contents, permission, decide, details) =>
    decide(permission === 'media' && isOurCamera(details)),
  );
  ours.setPermissionCheckHandler(
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

/** A scanner types; it is never spoken to as a device. */
const giveNoDevice = (ours: Session): void => {
  ours.setDevicePermissionHandler(() => false);
  ours.setBluetoothPairingHandler((_details, answer) => answer({ confirmed: false }));
  ours.setDisplayMediaRequestHandler((_request, give) => give({}));
  ours.on('select-hid-device', (event, _details, choose) => {
    event.preventDefault();
    choose(null);
  });
  ours.on('select-usb-device', (event, _details, choose) => {
    event.preventDefault();
    choose();
  });
  ours.on('select-serial-port', (event, _ports, _contents, choose) => {
    event.preventDefault();
    choose('');
  });
};

/** What the page made itself has an address of its own origin or none at all. */
const isHere = (address: string): boolean =>
  isOurs(address) || address.startsWith(`blob:${pageAddress}`) || address.startsWith('data:');

const loadNothingFromElsewhere = (ours: Session): void => {
  ours.webRequest.onBeforeRequest(({ url }, answer) => answer({ cancel: !isHere(url) && !isTools(url) }));
  ours.on('will-download', (event, item) => {
    if (!item.getURL().startsWith(`blob:${pageAddress}`)) event.preventDefault();
  });
};

/** The developer tools, which only an unpackaged program has, come from the runtime itself. */
const isTools = (address: string): boolean => !app.isPackaged && address.startsWith('devtools:');
