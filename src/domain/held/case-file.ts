/** What is kept besides the state of devices: fall cases, return batches, what returns are planned with, re-inspections. */
import type { BenchId } from '../brand.ts';
import type { Reinspection } from '../reinspection/reinspection.ts';
import type { FallCase } from './fall-case.ts';
import type { RecordedDeviceQuote, RecordedRepairTerms, ReturnBatch } from './return-batch.ts';
import type { RecordedReturnsBasis } from './returns-basis.ts';

export type CaseFile =
  | FallCase
  | ReturnBatch
  | RecordedRepairTerms
  | RecordedDeviceQuote
  | RecordedReturnsBasis
  | Reinspection;
export type CaseFileKind = CaseFile['kind'];

export const fallCaseKey = (number: number): string => `fall case ${number}`;
export const returnBatchKey = (number: number): string => `return batch ${number}`;
export const repairTermsKey = (modelSheetId: string): string => `repair terms ${modelSheetId}`;

export const deviceQuoteKey = (benchId: BenchId): string => `device quote ${benchId}`;
/** There is one. */
export const returnsBasisKey = 'returns basis';
export const reinspectionKey = (number: number): string => `reinspection ${number}`;

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
    case 'reinspection':
      return reinspectionKey(file.number);
  }
};
