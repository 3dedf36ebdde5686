/** Carries calls from our own windows to the station: the contract over Electron's IPC. */
import { type IpcMainInvokeEvent, ipcMain, type WebContents } from 'electron';
import { callRequestSchema, carrierError } from '../src/host/call-request.ts';
import { type Words, wordsIn } from '../src/host/words.ts';
import { type CallResult, contract } from '../src/station/contract.ts';
import type { Station } from '../src/station/station.ts';
import { callChannel } from './channel.ts';
import { isOurTopFrame } from './own-frame.ts';

/** Whether calls are taken: all, only those that begin nothing, or none any more. */
export type Taken = 'all' | 'questions' | 'none';

export interface Carrier {
  take(taken: Taken): void;
}

/**
 * Each process of a window is a session of its own, which ends with it. After a breakdown the window has another process, so
 * nobody goes on by the badge that was scanned before it; a page that was only loaded anew keeps its process and its session.
 */
export const connectCarrier = (station: Station, words: Words): Carrier => {
  let taken: Taken = 'all';
  const sessions = new Map<WebContents, string>();

  const end = (contents: WebContents): void => {
    const session = sessions.get(contents);
    sessions.delete(contents);
    if (session !== undefined) station.endSession(session);
  };
  const sessionOf = ({ sender, processId }: IpcMainInvokeEvent): string => {
    const session = `window-${sender.id}-${processId}`;
    if (sessions.get(sender) === session) return session;
    if (sessions.has(sender)) end(sender);
    else {
      sender.once('destroyed', () => end(sender));
      sender.on('render-process-gone', () => end(sender));
    }
    sessions.set(sender, session);
    return session;
  };

  ipcMain.handle(callChannel, (event, request: unknown): Promise<CallResult> | CallResult => {
    if (!isOurTopFrame(event)) return carrierError('caller-refused', words('caller-refused'));
    const read = callRequestSchema.safeParse(request);
    if (!read.success) return carrierError('body-malformed', words('body-malformed'));
    const { operation, input, language } = read.data;
    const isQuestion = contract.get(operation)?.kind === 'query';
    if (taken === 'none' || (taken === 'questions' && !isQuestion))
      return carrierError('shell-ending', wordsIn(language)('shell-ending'));
    return station.call({ session: sessionOf(event), from: 'window', operation, input, language });
  });

  return {
    take: (now) => {
      taken = now;
    },
  };
};
