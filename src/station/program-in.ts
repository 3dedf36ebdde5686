/** The employer's program that holds at the station: one answer for every operation. */
import type { Program } from '../domain/program.ts';
import { type ProgramInForce, programInForce } from '../domain/program-in-force.ts';
import type { LedgerReader } from '../ledger/ledger.ts';
import type { Rules } from './rules.ts';

export const inForceIn = async (reader: LedgerReader, { shipped }: Rules): Promise<ProgramInForce> =>
  programInForce(await reader.station(), shipped);

export const programIn = async (reader: LedgerReader, rules: Rules): Promise<Program> =>
  (await inForceIn(reader, rules)).program;
