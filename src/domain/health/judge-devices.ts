/** What the bench works with besides the PC: its printers, its scanner, its camera; and the faults that were written down. */
import type { Scanner } from '../scanner/scanner.ts';
import { daysBetweenMoments } from './days.ts';
import { type Finding, finding } from './finding.ts';
import { megabytes } from './judge-machine.ts';
import { thresholds } from './thresholds.ts';

export interface PrinterLook {
  readonly name: string;
  readonly condition: 'idle' | 'processing' | 'stopped' | 'unknown' | 'no answer';
  /** What stands in the way of a job: its code, and its sentence in the language of whoever asks. */
  readonly problem?: { readonly code: string; readonly sentence: string } | undefined;
}

export const judgePrinters = (looks: readonly PrinterLook[]): readonly Finding[] =>
  looks.length === 0 ? [finding('printers', 'attention', 'printers-none')] : looks.map(judgePrinter);

const judgePrinter = ({ name, condition, problem }: PrinterLook): Finding => {
  const printer = { private: name };
  if (problem !== undefined)
    return finding('printers', 'wrong', 'printer-problem', {
      printer,
      problem: { private: problem.sentence },
      code: problem.code,
    });
  switch (condition) {
    case 'idle':
    case 'processing':
      return finding('printers', 'good', 'printer-ready', { printer });
    case 'stopped':
      return finding('printers', 'wrong', 'printer-stopped', { printer });
    case 'unknown':
      return finding('printers', 'not known', 'printer-silent', { printer });
    case 'no answer':
      return finding('printers', 'wrong', 'printer-no-answer', { printer });
  }
};

export const judgeScanner = (scanner: Scanner | undefined): Finding => {
  if (scanner === undefined) return finding('scanner', 'not known', 'scanner-not-learnt');
  const values = { gap: scanner.gapMs };
  return scanner.usesUsPlaces
    ? finding('scanner', 'attention', 'scanner-other-layout', values)
    : finding('scanner', 'good', 'scanner-learnt', values);
};

export interface CameraLook {
  readonly permission: 'granted' | 'denied' | 'prompt' | 'unknown';
  readonly cameras: number;
  readonly doDecodersLoad: boolean;
}

export const judgeCamera = ({ permission, cameras, doDecodersLoad }: CameraLook): readonly Finding[] => {
  const decoders = doDecodersLoad ? [] : [finding('camera', 'wrong', 'decoders-fail')];
  if (permission === 'denied') return [...decoders, finding('camera', 'attention', 'camera-denied')];
  if (cameras === 0) return [...decoders, finding('camera', 'not known', 'camera-none')];
  if (decoders.length > 0) return decoders;
  return [
    permission === 'granted'
      ? finding('camera', 'good', 'camera-good', { count: cameras })
      : finding('camera', 'good', 'camera-will-ask', { count: cameras }),
  ];
};

export interface FaultLog {
  readonly now: string;
  /** Absent where no fault was ever written down. */
  readonly file?: { readonly writtenAt: string; readonly bytes: number } | undefined;
}

export const judgeFaults = ({ now, file }: FaultLog): Finding => {
  if (file === undefined) return finding('faults', 'good', 'faults-none');
  const values = {
    days: Math.max(0, daysBetweenMoments(file.writtenAt, now)),
    kilobytes: Math.ceil(file.bytes / 1000),
  };
  if (file.bytes > thresholds.faults.attentionBytes)
    return finding('faults', 'attention', 'faults-large', { megabytes: megabytes(file.bytes) });
  return values.days <= thresholds.faults.toldDays
    ? finding('faults', 'attention', 'faults-lately', values)
    : finding('faults', 'good', 'faults-old', values);
};
