/** Takes scans from the keyboard wedge and the scan field, asks the station what they mean, and hands them to the screens in order. */
import { type ReactNode, useMemo, useRef, useState } from 'react';
import type { Scanner } from '../../src/domain/scanner/scanner.ts';
import type { CallError } from '../../src/station/contract.ts';
import { isWindowLocked } from '../lock/window-locked.ts';
import { attend } from '../station/attended.ts';
import { useStationQuery } from '../station/hooks.ts';
import { settledCommands } from '../station/under-way.ts';
import { meaningOf, meaningOfReadings, readingsOf } from './read-wedge.ts';
import {
  type KeyListener,
  type Scan,
  type ScanBoard,
  ScanBoardContext,
  type ScanHandler,
  type ScanLayer,
  type ScanMeaning,
  type ScanNotice,
  type ScanReading,
  ScanReadingContext,
} from './scan.ts';
import { useWedge, type WedgeListener } from './use-wedge.ts';

/** A scan waits this long for the command before it, in milliseconds: the screen it meets is then the one that was meant. */
const mostWaitMs = 3_000;

interface Listed {
  readonly handler: { readonly current: ScanHandler };
  readonly layer: ScanLayer;
}

export const ScanProvider = ({ children }: { readonly children: ReactNode }) => {
  const [reading, setReading] = useState<ScanReading>({ isReading: false });
  const listed = useRef<readonly Listed[]>([]);
  const turn = useRef<Promise<void>>(Promise.resolve());

  const status = useStationQuery('station.status', {}, { keepPrevious: true }).data;
  const scanner = useRef<Scanner>(undefined);
  const keyListener = useRef<KeyListener>(undefined);
  scanner.current = status?.state === 'ready' ? status.scanner : undefined;

  const { board, listener } = useMemo(() => {
    const handOn = (scan: Scan): void => {
      const order = [...listed.current].reverse();
      const ask = ({ handler }: Listed): boolean => handler.current(scan);
      const inLayer = (wanted: ScanLayer) => order.filter(({ layer }) => layer === wanted);
      if (inLayer('lock').length > 0) return void inLayer('lock').some(ask);
      for (const witness of inLayer('witness')) ask(witness);
      if (!inLayer('screen').some(ask)) inLayer('window').some(ask);
    };
    const tell = (
      text: string,
      meaning: ScanMeaning | CallError,
      typed: boolean,
      notice?: ScanNotice,
    ): void => {
      const error = 'meaning' in meaning ? undefined : meaning.sentence;
      const isCommand = 'meaning' in meaning && meaning.meaning === 'command';
      setReading((before) => ({
        last: text,
        isReading: false,
        error,
        notice: isCommand ? before.notice : notice,
      }));
      if ('meaning' in meaning) handOn({ text, meaning, typed });
    };
    /** One scan after another, so that what was scanned first is dealt with first. */
    const inTurn = (deal: () => Promise<void> | void): void => {
      attend();
      turn.current = turn.current
        .then(() => settledCommands(mostWaitMs))
        .then(deal)
        .catch((fault: unknown) => console.error(fault));
    };
    const submit = (text: string, typed: boolean): void =>
      inTurn(async () => {
        setReading(({ notice }) => ({ last: text, isReading: true, notice }));
        tell(text, await meaningOf(text, typed), typed);
      });
    const press: ScanBoard['press'] = (command) =>
      inTurn(() => handOn({ text: command, meaning: { meaning: 'command', command }, typed: true }));
    const takeScan: WedgeListener['onScan'] = (scan, giveBack) =>
      inTurn(async () => {
        const readings = readingsOf(scan, scanner.current);
        setReading(({ notice }) => ({ last: readings[0]?.text, isReading: true, notice }));
        const read = await meaningOfReadings(readings);
        if (read === undefined) return setReading({ isReading: false });
        const { reading, meaning } = read;
        const isUnknown = 'meaning' in meaning && meaning.meaning === 'unknown';
        if (isUnknown && !scan.isSure && giveBack(scan.keys.length)) return setReading({ isReading: false });
        if (reading.lead > 0) giveBack(reading.lead);
        const mayBeCapsLock = isUnknown && readings.some((other) => other.fault === 'caps lock');
        const fault = reading.fault ?? (mayBeCapsLock ? 'caps lock' : undefined);
        tell(reading.text, meaning, false, fault);
      });
    const board: ScanBoard = {
      add: (handler, layer) => {
        const entry = { handler, layer };
        listed.current = [...listed.current, entry];
        return () => {
          listed.current = listed.current.filter((other) => other !== entry);
        };
      },
      submit,
      press,
      dismissNotice: () => setReading(({ last }) => ({ last, isReading: false })),
      listenToKeys: (taker) => {
        keyListener.current = (event) => !isWindowLocked() && taker(event);
        return () => {
          keyListener.current = undefined;
        };
      },
    };
    const listener: WedgeListener = {
      onScan: takeScan,
      onDigit: press,
      onNoEnd: () => setReading({ isReading: false, notice: 'no end' }),
    };
    return { board, listener };
  }, []);

  useWedge(listener, scanner, keyListener);

  return (
    <ScanBoardContext value={board}>
      <ScanReadingContext value={reading}>{children}</ScanReadingContext>
    </ScanBoardContext>
  );
};
