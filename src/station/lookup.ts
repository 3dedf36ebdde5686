/** Look-ups that end in a refusal with a sentence where nothing is found. */
import type { BenchId } from '../domain/brand.ts';
import type { InspectionCase } from '../domain/decide/inspection.ts';
import type { Station } from '../domain/evolve.ts';
import type { Inspection } from '../domain/inspection.ts';
import type { Person } from '../domain/person.ts';
import { programInForce } from '../domain/program-in-force.ts';
import { isRefusal, type Refusal, refusal } from '../domain/refusal.ts';
import type { DeviceRow, LedgerReader } from '../ledger/ledger.ts';
import type { Rules } from './rules.ts';

export const stationIn = async (reader: LedgerReader): Promise<Station | Refusal> =>
  (await reader.station()) ?? refusal('station-not-set-up');

export const deviceIn = async (reader: LedgerReader, benchId: BenchId): Promise<DeviceRow | Refusal> =>
  (await reader.device(benchId)) ?? refusal('device-unknown', { benchId }, 'benchId');

export const personIn = async (reader: LedgerReader, personId: string): Promise<Person | Refusal> =>
  (await reader.person(personId)) ?? refusal('person-unknown', { personId }, 'personId');

/** What is wrong with a person who is named in an input; nothing where nobody is. */
export const namedPersonFault = async (
  reader: LedgerReader,
  personId: string | undefined,
  field: string,
): Promise<Refusal | undefined> =>
  personId === undefined || (await reader.person(personId)) !== undefined
    ? undefined
    : refusal('person-unknown', { personId }, field);

export interface OpenCase extends InspectionCase {
  readonly station: Station;
  readonly inspection: Inspection;
  readonly row: DeviceRow;
}

/** An inspection with everything that it is held against. */
export const caseIn = async (
  reader: LedgerReader,
  number: number,
  rules: Rules,
): Promise<OpenCase | Refusal> => {
  const station = await stationIn(reader);
  if (isRefusal(station)) return station;
  const inspection = await reader.inspection(number);
  if (inspection === undefined) return refusal('inspection-unknown', { inspection: number }, 'inspection');
  const row = await deviceIn(reader, inspection.benchId);
  if (isRefusal(row)) return row;
  const procedure = rules.procedureOf(inspection.procedure);
  if (isRefusal(procedure)) return procedure;
  return {
    station,
    inspection,
    row,
    ...row,
    procedure,
    lengthUnit: station.lengthUnit,
    inForce: programInForce(station, rules.shipped),
    releaseRules: rules.release,
  };
};
