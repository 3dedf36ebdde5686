/** The one thing that the page is given: the call to the station. */
import { contextBridge, ipcRenderer } from 'electron';
import { callChannel } from './channel.ts';

contextBridge.exposeInMainWorld('srlBench', {
  call: (operation: string, input: unknown, language: string): Promise<unknown> =>
    ipcRenderer.invoke(callChannel, { operation, input, language }),
});
