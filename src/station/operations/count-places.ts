/** `count.places`: the places in store, with how many devices each has and its latest count. */
import { z } from 'zod';
import { placeCodeSchema } from '../../domain/custody/place-code.ts';
import { countedPlaceSchema } from '../../domain/custody/shelf-count.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { namesOf } from '../views.ts';

export const countPlaces = defineOperation({
  name: 'count.places',
  summary: 'The places in store, with their devices and their latest count.',
  kind: 'query',
  access: everyRole,
  input: z.object({}),
  output: z.object({
    places: z.array(
      z.object({
        place: placeCodeSchema,
        devices: z.int(),
        counted: countedPlaceSchema.omit({ place: true }).optional(),
      }),
    ),
  }),
  run: ({ ledger }) =>
    ledger.read(async (reader) => {
      const station = await stationIn(reader);
      if (isRefusal(station)) return station;
      const name = await namesOf(reader);
      const devices = new Map((await reader.places()).map((each) => [each.place, each.devices]));
      const counts = new Map((station.countedPlaces ?? []).map((each) => [each.place, each]));
      const codes = [...new Set([...devices.keys(), ...counts.keys()])].sort();
      return {
        places: codes.map((place) => {
          const counted = counts.get(place);
          return {
            place,
            devices: devices.get(place) ?? 0,
            ...(counted === undefined ? {} : { counted: { ...counted, by: name(counted.by) } }),
          };
        }),
      };
    }),
});
