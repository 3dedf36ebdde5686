/** What is kept about held devices besides their own state: fall cases, return batches, what a manufacturer can repair, and what returns are planned with. */
import type { BenchId } from '../brand.ts';
import type { FallCase } from './fall-case.ts';
import type { RecordedDeviceQuote, RecordedRepairTerms, ReturnBatch } from './return-batch.ts';
import type { RecordedReturnsBasis } from './returns-basis.ts';

export type CaseFile =
  | FallCase
  | ReturnBatch
  | RecordedRepairTerms
  | RecordedDeviceQuote
  | RecordedReturnsBasis;
export type CaseFileKind = CaseFile['kind'];

export const fallCaseKey = (number: number): string => `fall case ${number}`;
export const returnBatchKey = (number: number): string => `return batch ${number}`;
export const repairTermsKey = (modelSheetId: string): string => `repair terms ${modelSheetId}`;

export const deviceQuoteKey = (benchId: BenchId): string => `device quote ${benchId}`;
/** There is one. */
export const returnsBasisKey = 'returns basis';

export const keyOf = (file: CaseFile): string => {
  switch (file.kind) {
    case 'fall case':
      return fallCaseKey(file.number);
    case 'return batch':
      return returnBatchKey(file.number);
    case 'repair terms':
      return repairTermsKey(file.modelSheetId);
    case 'device quote':
      return deviceQuoteKey(file.benchId);
    case 'returns basis':
      return returnsBasisKey;
  }
};
