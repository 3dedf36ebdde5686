/** Prints the quarantine tag of a device that was taken out of service at the desk, and again where more reasons follow. */
import { useEffect, useRef, useState } from 'react';
import type { BenchId } from '../../../src/domain/brand.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { primaryWayOf } from '../bench/print-ways.ts';
import { type PrintStep, usePrintTag } from '../bench/use-print-tag.ts';

/** How long a tag waits for what is just being said of the device; then it comes out as it is (from memory, no source). */
const patienceMs = 20_000;

export interface QuarantineTag {
  readonly step: PrintStep;
  /** How many were sent to the printer; only the last one counts. */
  readonly sent: number;
}

/** `tagNumber` is absent where the device was out of service before and keeps the tag that it has. */
export const useQuarantineTag = (
  benchId: BenchId,
  tagNumber: number | undefined,
  isBeingExplained: boolean,
): QuarantineTag => {
  const printers = useStationQuery('printer.list', {}).data?.printers;
  const { step, give } = usePrintTag(benchId, 'quarantine');
  const [sent, setSent] = useState<readonly number[]>([]);
  const way = printers && primaryWayOf(printers, 'quarantine');
  const isOwed =
    tagNumber !== undefined &&
    !sent.includes(tagNumber) &&
    way?.way === 'printer' &&
    step.step !== 'printing';
  const print = useRef<() => void>(() => undefined);
  useEffect(() => {
    print.current = () => {
      if (tagNumber === undefined || way === undefined) return;
      setSent((before) => [...before, tagNumber]);
      void give(way, undefined);
    };
  });
  useEffect(() => {
    if (!isOwed) return;
    const timer = window.setTimeout(() => print.current(), isBeingExplained ? patienceMs : 0);
    return () => window.clearTimeout(timer);
  }, [isOwed, isBeingExplained]);
  return { step, sent: sent.length };
};
