/** What is kept besides the state of devices: fall cases, return batches, what a manufacturer can repair, re-inspections. */
import type { Reinspection } from '../reinspection/reinspection.ts';
import type { FallCase } from './fall-case.ts';
import type { RecordedRepairTerms, ReturnBatch } from './return-batch.ts';

export type CaseFile = FallCase | ReturnBatch | RecordedRepairTerms | Reinspection;
export type CaseFileKind = CaseFile['kind'];

export const fallCaseKey = (number: number): string => `fall case ${number}`;
export const returnBatchKey = (number: number): string => `return batch ${number}`;
export const repairTermsKey = (modelSheetId: string): string => `repair terms ${modelSheetId}`;

export const reinspectionKey = (number: number): string => `reinspection ${number}`;

export const keyOf = (file: CaseFile): string => {
  switch (file.kind) {
    case 'fall case':
      return fallCaseKey(file.number);
    case 'return batch':
      return returnBatchKey(file.number);
    case 'repair terms':
      return repairTermsKey(file.modelSheetId);
    case 'reinspection':
      return reinspectionKey(file.number);
  }
};
