/** Carries calls from our own windows to the station: the contract over Electron's IPC. */
import { type IpcMainInvokeEvent, ipcMain, type WebContents } from 'electron';
import { callRequestSchema, carrierError } from '../src/host/call-request.ts';
import type { Words } from '../src/host/words.ts';
import type { CallResult } from '../src/station/contract.ts';
import type { Station } from '../src/station/station.ts';
import { callChannel, pageAddress } from './channel.ts';

/** Each window is a session of its own, which ends with it. */
export const connectCarrier = (station: Station, words: Words): void => {
  const known = new Set<WebContents>();
  ipcMain.handle(callChannel, (event, request: unknown): Promise<CallResult> | CallResult => {
    if (!isOurTopFrame(event)) return carrierError('caller-refused', words('caller-refused'));
    const read = callRequestSchema.safeParse(request);
    if (!read.success) return carrierError('body-malformed', words('body-malformed'));
    const session = `window-${event.sender.id}`;
    if (!known.has(event.sender)) {
      known.add(event.sender);
      event.sender.once('destroyed', () => {
        known.delete(event.sender);
        station.endSession(session);
      });
    }
    const { operation, input, language } = read.data;
    return station.call({ session, from: 'window', operation, input, language });
  });
};

/** A frame inside the page, or a page that is not ours, is not answered. */
const isOurTopFrame = ({ sender, senderFrame }: IpcMainInvokeEvent): boolean =>
  senderFrame !== null && senderFrame === sender.mainFrame && senderFrame.url.startsWith(pageAddress);
