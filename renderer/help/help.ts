/** Opening the help, from wherever in the window. */
import { createContext, useContext } from 'react';

export interface HelpDesk {
  open(): void;
}

export const HelpContext = createContext<HelpDesk>({ open: () => undefined });

export const useHelp = (): HelpDesk => useContext(HelpContext);
