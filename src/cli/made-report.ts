/** A report that is made by a command: it waits until the file is there. */
import type { InputOf, OutputOf } from '../station/contract.ts';
import { Failure } from './failure.ts';
import type { StationCall } from './job.ts';
import { untilEnded } from './until-ended.ts';

export type MadeReport = Extract<OutputOf<'report.status'>, { state: 'made' }>;

export const madeReport = async (call: StationCall, request: InputOf<'report.make'>): Promise<MadeReport> => {
  const { job } = await call('report.make', request);
  const end = await untilEnded(() => call('report.status', { job }));
  if (end.state === 'refused') throw new Failure({ code: end.code, sentence: end.sentence, field: 'report' });
  return end;
};
