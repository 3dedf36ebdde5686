/** What the page is given: the call to the station, the acts of the shell, and its news. */
import { contextBridge, ipcRenderer } from 'electron';
import type { ShellBridge, ShellNews } from '../src/station/shell-bridge.ts';
import { actChannel, callChannel, newsChannel } from './channel.ts';

let listener: ((news: ShellNews) => void) | undefined;
ipcRenderer.on(newsChannel, (_event, news: ShellNews) => listener?.(news));

const bridge: ShellBridge = {
  call: (operation, input, language) => ipcRenderer.invoke(callChannel, { operation, input, language }),
  act: (act) => ipcRenderer.invoke(actChannel, act),
  onNews: (told) => {
    listener = told;
  },
};

contextBridge.exposeInMainWorld('srlBench', Object.freeze(bridge));
