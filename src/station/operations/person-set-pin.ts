/** `person.set-pin`: the first PIN of a person, or a reset with its reason; that it was set is recorded, the PIN is not. */
import { z } from 'zod';
import { decideSetPin } from '../../domain/decide/person.ts';
import { whySchema } from '../../domain/person-event.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { personIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { hashPin, isWeakPin } from '../pin.ts';
import { record } from '../record.ts';

export const personSetPin = defineOperation({
  name: 'person.set-pin',
  summary: 'Sets the PIN with which a person signs; where one is set already, with the reason.',
  kind: 'command',
  access: ['administrator'],
  input: z.object({ personId: z.string(), pin: z.string(), because: whySchema.optional() }),
  output: z.object({}),
  run: async (context, { personId, pin, because }) => {
    if (isWeakPin(pin)) return refusal('pin-too-weak', {}, 'pin');
    const credential = await hashPin(personId, pin);
    const result = await record(
      context,
      async (reader, { by }) => {
        const person = await personIn(reader, personId);
        if (isRefusal(person)) return person;
        const wasSet = (await reader.credential(personId)) !== undefined;
        return decideSetPin(person, { wasSet, by, because });
      },
      (writer) => writer.putCredential(credential),
    );
    return isRefusal(result) ? result : {};
  },
});
