/** The calls of a preview and of an import, and what the station answers. */
import type { InputOf, OutputOf } from '../../../src/station/contract.ts';
import { call } from '../../station/client.ts';
import type { WorkCalls } from '../../station/use-work.ts';

export type ImportStatus = OutputOf<'import.status'>;
export type ImportPreview = Extract<ImportStatus, { state: 'previewed' }>['preview'];
export type ImportedFleet = Extract<ImportStatus, { state: 'imported' }>;

const shared = {
  status: (job: number) => call('import.status', { job }),
  cancel: (job: number) => call('import.cancel', { job }),
};

export const previewCalls: WorkCalls<InputOf<'import.preview'>, ImportStatus> = {
  isCommand: false,
  start: (input) => call('import.preview', input),
  ...shared,
};

export const runCalls: WorkCalls<InputOf<'import.run'>, ImportStatus> = {
  isCommand: true,
  start: (input) => call('import.run', input),
  ...shared,
};

export const exportCalls: WorkCalls<InputOf<'record.export'>, OutputOf<'export.status'>> = {
  isCommand: false,
  start: (input) => call('record.export', input),
  status: (job) => call('export.status', { job }),
  cancel: (job) => call('export.cancel', { job }),
};
