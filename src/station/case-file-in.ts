/** Look-ups of fall cases and return batches that end in a refusal where there is none. */
import { fallCaseKey, returnBatchKey } from '../domain/held/case-file.ts';
import type { FallCase } from '../domain/held/fall-case.ts';
import type { ReturnBatch } from '../domain/held/return-batch.ts';
import { type Refusal, refusal } from '../domain/refusal.ts';
import type { LedgerReader } from '../ledger/ledger.ts';

export const fallCaseIn = async (reader: LedgerReader, fallCase: number): Promise<FallCase | Refusal> => {
  const file = await reader.caseFile(fallCaseKey(fallCase));
  return file?.kind === 'fall case' ? file : refusal('fall-case-unknown', { fallCase }, 'fallCase');
};

export const returnBatchIn = async (reader: LedgerReader, batch: number): Promise<ReturnBatch | Refusal> => {
  const file = await reader.caseFile(returnBatchKey(batch));
  return file?.kind === 'return batch' ? file : refusal('batch-unknown', { batch }, 'batch');
};
