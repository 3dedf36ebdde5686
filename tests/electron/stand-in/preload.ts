/** Runs the bundle of a preload as Electron does: in the top frame alone, before the page, with nothing to require but `electron`. */
export const asPreload = (bundle: string): string => `
  if (window === window.top) {
    const listeners = new Map();
    const electron = {
      contextBridge: { exposeInMainWorld: (name, api) => { window[name] = Object.freeze(api); } },
      ipcRenderer: {
        invoke: (channel, ...args) => window.standInInvoke(channel, ...args),
        on: (channel, listener) => void listeners.set(channel, listener),
      },
    };
    window.standInReceive = (channel, ...args) => listeners.get(channel)?.({}, ...args);
    const require = (name) => {
      if (name !== 'electron') throw new Error('A sandboxed preload cannot require ' + name);
      return electron;
    };
    ((require, exports, module) => {${bundle}})(require, {}, { exports: {} });
  }
`;
