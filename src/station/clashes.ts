/** What the register already holds that a device to be registered could clash with. */
import type { BenchId } from '../domain/brand.ts';
import type { Clashes, Registration } from '../domain/decide/device.ts';
import type { LedgerReader } from '../ledger/ledger.ts';
import { type BoundCode, codeMeaning } from './bound-code.ts';

export const clashesOf = async (
  reader: LedgerReader,
  benchId: BenchId,
  { serial, modelSheetId }: Pick<Registration, 'serial' | 'modelSheetId'>,
  codes: readonly BoundCode[],
): Promise<Clashes> => {
  const twins = serial === '' ? [] : await reader.devicesBySerial(serial, modelSheetId);
  return {
    benchIdTaken: (await reader.device(benchId)) !== undefined,
    modelSheetKnown: (await reader.modelSheet(modelSheetId)) !== undefined,
    sameSerial: twins[0],
    codeTaken: await firstTakenCode(reader, codes),
  };
};

/** The first of the codes that means something at this station already, and what. */
export const firstTakenCode = async (
  reader: LedgerReader,
  codes: readonly BoundCode[],
): Promise<Clashes['codeTaken']> => {
  for (const bound of codes) {
    const meaning = await codeMeaning(reader, bound);
    if (meaning !== undefined) return { code: bound.otherCode.code, meaning };
  }
  return undefined;
};
