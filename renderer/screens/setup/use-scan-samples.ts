/** Takes scans key by key while a scanner is taught, whatever the keys would do otherwise. */
import { useEffect, useState } from 'react';
import type { ScanSample } from '../../../src/domain/scanner/learn-scanner.ts';
import { useScanBoard } from '../../scan/scan.ts';
import { struckKeyOf } from '../../scan/struck-key.ts';
import { type Burst, noBurst, scanMinLength } from '../../scan/wedge.ts';

/** A scan that nothing ends is over when no key has followed for this long, in milliseconds; slower than any scanner. */
const pauseMs = 500;

/** The scans until now. Escape is left to whoever waits for it; a Tab that ends no scan, too. */
export const useScanSamples = (): readonly ScanSample[] => {
  const { listenToKeys } = useScanBoard();
  const [samples, setSamples] = useState<readonly ScanSample[]>([]);
  useEffect(() => {
    let keys: Burst = noBurst;
    let timer: number | undefined;
    /** True where the keys were a scan. */
    const end = (by: ScanSample['end']): boolean => {
      const sample = { keys: [...keys], end: by };
      keys = noBurst;
      if (sample.keys.length < scanMinLength) return false;
      setSamples((before) => [...before, sample]);
      return true;
    };
    const endAfterPause = (): void => {
      timer = window.setTimeout(() => end('none'), pauseMs);
    };
    const stop = listenToKeys((event) => {
      window.clearTimeout(timer);
      const key = struckKeyOf(event);
      switch (key.kind) {
        case 'modifies':
        case 'breaks':
          endAfterPause();
          return false;
        case 'ends':
          return end(key.end);
        case 'writes':
          keys = [...keys, key.stroke];
          endAfterPause();
          return true;
      }
    });
    return () => {
      window.clearTimeout(timer);
      stop();
    };
  }, [listenToKeys]);
  return samples;
};
