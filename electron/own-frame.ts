/** Who may speak to the main process: the top frame of a window of ours, while it shows our page. */
import type { IpcMainInvokeEvent } from 'electron';
import { isOurs } from './channel.ts';

/** A frame inside the page, a frame that is gone, and a page that is not ours, are not answered. */
export const isOurTopFrame = ({
  sender,
  senderFrame,
}: Pick<IpcMainInvokeEvent, 'sender' | 'senderFrame'>): boolean =>
  senderFrame !== null && senderFrame === sender.mainFrame && isOurs(senderFrame.url);
