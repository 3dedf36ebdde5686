/** Devices of the register that are chosen one after another, by scan or by their rows, to be treated alike. */
import { useState } from 'react';
import type { BenchId } from '../../../src/domain/brand.ts';
import { isPast, useScanHandler } from '../../scan/scan.ts';

export interface ChoiceOfDevices {
  /** In the order in which they were chosen; absent while nothing is being chosen. */
  readonly chosen: readonly BenchId[] | undefined;
  begin(): void;
  add(benchIds: readonly BenchId[]): void;
  toggle(benchId: BenchId): void;
  end(): void;
}

export const useChoiceOfDevices = (): ChoiceOfDevices => {
  const [chosen, setChosen] = useState<readonly BenchId[]>();
  const add = (benchIds: readonly BenchId[]): void =>
    setChosen((before = []) => [...new Set([...before, ...benchIds])]);
  useScanHandler(({ meaning }) => {
    if (chosen === undefined || meaning.meaning !== 'device' || isPast(meaning.tag)) return false;
    add([meaning.device.benchId]);
    return true;
  });
  return {
    chosen,
    begin: () => setChosen([]),
    add,
    toggle: (benchId) =>
      setChosen((before = []) =>
        before.includes(benchId) ? before.filter((other) => other !== benchId) : [...before, benchId],
      ),
    end: () => setChosen(undefined),
  };
};
