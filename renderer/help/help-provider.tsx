/** The help over whatever is shown: opened by F1, by `?`, by its symbol, by its button. */
import { type ReactNode, useCallback, useMemo, useState } from 'react';
import { useScanHandler } from '../scan/scan.ts';
import { HelpContext } from './help.ts';
import { HelpDialog } from './help-dialog.tsx';
import { type KeyHere, keysOnScreen } from './keys-on-screen.ts';
import { useHelpKey } from './use-help-key.ts';

export const HelpProvider = ({ children }: { readonly children: ReactNode }) => {
  /** What worked on the screen when the help was opened over it; absent while it is closed. */
  const [keys, setKeys] = useState<readonly KeyHere[]>();
  const open = useCallback((): void => setKeys((before) => before ?? keysOnScreen()), []);
  useHelpKey(open);
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command' || meaning.command !== 'help') return false;
    open();
    return true;
  }, 'window');
  const desk = useMemo(() => ({ open }), [open]);
  return (
    <HelpContext value={desk}>
      {children}
      {keys === undefined ? null : <HelpDialog keys={keys} onClose={() => setKeys(undefined)} />}
    </HelpContext>
  );
};
