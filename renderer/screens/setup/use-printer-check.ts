/** Asks a printer how it is, when somebody wants to know. */
import { useState } from 'react';
import type { CallResult, OutputOf } from '../../../src/station/contract.ts';
import { call } from '../../station/client.ts';
import type { PrinterSettings } from './printer-draft.ts';

export interface PrinterCheck {
  readonly result: CallResult<OutputOf<'printer.check'>> | undefined;
  readonly isAsking: boolean;
  ask(settings: PrinterSettings): Promise<void>;
}

export const usePrinterCheck = (): PrinterCheck => {
  const [result, setResult] = useState<PrinterCheck['result']>();
  const [isAsking, setAsking] = useState(false);
  return {
    result,
    isAsking,
    ask: async (settings) => {
      setAsking(true);
      setResult(undefined);
      setResult(await call('printer.check', { settings }));
      setAsking(false);
    },
  };
};
