/** Takes scans from the keyboard wedge and the scan field, asks the station what they mean, and hands them to the screens in order. */
import { type ReactNode, useMemo, useRef, useState } from 'react';
import { readCommandSymbol } from '../../src/domain/command-symbol.ts';
import type { CallError } from '../../src/station/contract.ts';
import { call } from '../station/client.ts';
import {
  type Scan,
  type ScanBoard,
  ScanBoardContext,
  type ScanHandler,
  type ScanLayer,
  type ScanMeaning,
  type ScanReading,
  ScanReadingContext,
} from './scan.ts';
import { type DigitCommand, useWedge } from './use-wedge.ts';

interface Listed {
  readonly handler: { readonly current: ScanHandler };
  readonly layer: ScanLayer;
}

export const ScanProvider = ({ children }: { readonly children: ReactNode }) => {
  const [reading, setReading] = useState<ScanReading>({ isReading: false });
  const listed = useRef<readonly Listed[]>([]);
  const turn = useRef<Promise<void>>(Promise.resolve());

  const board = useMemo<ScanBoard>(() => {
    const handOn = (scan: Scan): void => {
      const order = [...listed.current].reverse();
      const ask = ({ handler }: Listed): boolean => handler.current(scan);
      const inLayer = (wanted: ScanLayer) => order.filter(({ layer }) => layer === wanted);
      for (const witness of inLayer('witness')) ask(witness);
      if (!inLayer('screen').some(ask)) inLayer('window').some(ask);
    };
    const read = async (text: string, typed: boolean): Promise<void> => {
      setReading({ last: text, isReading: true });
      const meaning = await meaningOf(text, typed);
      if (!('meaning' in meaning))
        return setReading({ last: text, isReading: false, error: meaning.sentence });
      setReading({ last: text, isReading: false });
      handOn({ text, meaning, typed });
    };
    /** One scan after another, so that what was scanned first is dealt with first. */
    const inTurn = (deal: () => Promise<void> | void): void => {
      turn.current = turn.current.then(deal).catch((fault: unknown) => console.error(fault));
    };
    return {
      add: (handler, layer) => {
        const entry = { handler, layer };
        listed.current = [...listed.current, entry];
        return () => {
          listed.current = listed.current.filter((other) => other !== entry);
        };
      },
      submit: (text, typed) => inTurn(() => read(text, typed)),
      press: (command) =>
        inTurn(() => handOn({ text: command, meaning: { meaning: 'command', command }, typed: true })),
    };
  }, []);

  useWedge(
    useMemo(
      () => ({
        onScan: (text: string) => board.submit(text, false),
        onDigit: (digit: DigitCommand) => board.press(digit),
      }),
      [board],
    ),
  );

  return (
    <ScanBoardContext value={board}>
      <ScanReadingContext value={reading}>{children}</ScanReadingContext>
    </ScanBoardContext>
  );
};

/** Command symbols are known without asking. At an empty station every other text is unknown, and the set-up takes badges. */
const meaningOf = async (text: string, typed: boolean): Promise<ScanMeaning | CallError> => {
  const command = readCommandSymbol(text);
  if (command !== undefined) return { meaning: 'command', command };
  const result = await call('scan.interpret', { text, typed });
  if (result.ok) return result.output;
  return result.error.code === 'station-not-set-up' ? { meaning: 'unknown', text } : result.error;
};
