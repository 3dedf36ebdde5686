/** What is kept about held devices besides their own state: fall cases, return batches, what a manufacturer can repair, and what returns are planned with. */
import type { FallCase } from './fall-case.ts';
import type { RecordedRepairTerms, ReturnBatch } from './return-batch.ts';
import type { RecordedReturnsBasis } from './returns-basis.ts';

export type CaseFile = FallCase | ReturnBatch | RecordedRepairTerms | RecordedReturnsBasis;
export type CaseFileKind = CaseFile['kind'];

export const fallCaseKey = (number: number): string => `fall case ${number}`;
export const returnBatchKey = (number: number): string => `return batch ${number}`;
export const repairTermsKey = (modelSheetId: string): string => `repair terms ${modelSheetId}`;

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
    case 'returns basis':
      return returnsBasisKey;
  }
};
