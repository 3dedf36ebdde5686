/** `identity.search`: who a device may be by what can be seen on it. Nothing is acted on here. */
import { z } from 'zod';
import { observationSchema, seenFields } from '../../domain/identity/observation.ts';
import { programInForce } from '../../domain/program-in-force.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { rankingView, rankingViewSchema, rankRegister } from '../identity-view.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';

export const identitySearch = defineOperation({
  name: 'identity.search',
  summary: 'Who a device may be by what can be seen on it.',
  kind: 'query',
  access: ['attendant', 'inspector', 'administrator'],
  input: z.object({ observation: observationSchema }),
  output: rankingViewSchema,
  run: (context, { observation }) =>
    context.ledger.read(async (reader) => {
      const station = await stationIn(reader);
      if (isRefusal(station)) return station;
      if (seenFields(observation).length === 0) return refusal('identity-nothing-seen', {}, 'observation');
      const today = context.occasion(station).on;
      const ranking = await rankRegister(reader, observation);
      return rankingView(
        reader,
        ranking,
        today,
        programInForce(station, context.rules.shipped).program.dueSoonDays,
        today,
      );
    }),
});
