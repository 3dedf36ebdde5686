/** `kit.save`: names a set of devices that go out together, or changes one. */
import { z } from 'zod';
import { kitSchema } from '../../domain/custody/kit.ts';
import { decideSaveKit } from '../../domain/decide/kit.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';

export const kitSave = defineOperation({
  name: 'kit.save',
  summary: 'Names a set of devices that go out together.',
  kind: 'command',
  access: ['attendant', 'administrator'],
  /** A new kit where no ID is given. */
  input: kitSchema.partial({ kitId: true }),
  output: z.object({ kitId: z.string() }),
  run: async (context, { kitId, ...kit }) => {
    const id = kitId ?? `K${Buffer.from(context.randomBytes(6)).toString('hex')}`;
    const result = await record(context, async (reader) => {
      const station = await stationIn(reader);
      if (isRefusal(station)) return station;
      const kits = station.kits ?? [];
      if (kitId !== undefined && kits.every((each) => each.kitId !== kitId))
        return refusal('kit-unknown', { kit: kitId }, 'kitId');
      const rows = await Promise.all(kit.benchIds.map((benchId) => reader.device(benchId)));
      const devices = rows.flatMap((row) => (row === undefined ? [] : [row.device]));
      const places = [
        ...(await reader.places()).map(({ place }) => place),
        ...(station.countedPlaces ?? []).map(({ place }) => place),
      ];
      return decideSaveKit({ kitId: id, ...kit }, devices, kits, places);
    });
    return isRefusal(result) ? result : { kitId: id };
  },
});
