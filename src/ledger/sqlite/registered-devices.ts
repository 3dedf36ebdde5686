/** Of every device what tells it from the others, out of its state. */
import { sql } from 'kysely';
import type { BenchId } from '../../domain/brand.ts';
import type { RegisteredDevice } from '../../domain/identity/registered-device.ts';
import type { LedgerDatabase } from './schema.ts';

export const registeredDevicesIn = async (database: LedgerDatabase): Promise<readonly RegisteredDevice[]> => {
  const text = (path: string) => sql<string | null>`json_extract(state, ${path})`;
  const rows = await database
    .selectFrom('device')
    .select([
      'bench_id',
      'model_sheet_id',
      'standing',
      text('$.serial').as('serial'),
      text('$.dateOfManufacture').as('made'),
      text('$.regularUserId').as('user'),
      sql<number>`json_extract(state, '$.lastTagNumber')`.as('tag_number'),
    ])
    .execute();
  return rows.map(({ bench_id, model_sheet_id, standing, serial, made, user, tag_number }) => ({
    benchId: bench_id as BenchId,
    modelSheetId: model_sheet_id,
    standing,
    serial: serial ?? '',
    dateOfManufacture: made ?? '',
    ...(user === null ? {} : { regularUserId: user }),
    tagNumber: tag_number,
  }));
};
