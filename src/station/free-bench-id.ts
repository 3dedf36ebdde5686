/** A random bench ID that no device of this station has or ever had; never all zeros, which a stuck key would type. */
import { benchIdFrom } from '../domain/bench-id/bench-id.ts';
import type { BenchId } from '../domain/brand.ts';
import type { LedgerReader } from '../ledger/ledger.ts';

export const freeBenchId = async (
  reader: LedgerReader,
  randomBytes: (count: number) => Uint8Array,
): Promise<BenchId> => {
  for (;;) {
    const symbols = [...randomBytes(6)].map((byte) => byte & 31);
    const benchId = benchIdFrom(symbols);
    if (symbols.some((symbol) => symbol !== 0) && (await reader.device(benchId)) === undefined)
      return benchId;
  }
};
