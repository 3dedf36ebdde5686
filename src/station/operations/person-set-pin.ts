/** `person.set-pin`: a new PIN for a person; that it was set is recorded, the PIN is not. */
import { z } from 'zod';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { personIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { hashPin, isWeakPin } from '../pin.ts';
import { record } from '../record.ts';

export const personSetPin = defineOperation({
  name: 'person.set-pin',
  summary: 'Sets the PIN with which a person signs.',
  kind: 'command',
  access: ['administrator'],
  input: z.object({ personId: z.string(), pin: z.string() }),
  output: z.object({}),
  run: async (context, { personId, pin }) => {
    if (isWeakPin(pin)) return refusal('pin-too-weak', {}, 'pin');
    const credential = await hashPin(personId, pin);
    const result = await record(
      context,
      async (reader) => {
        const person = await personIn(reader, personId);
        return isRefusal(person) ? person : [{ type: 'person.pin-set', personId }];
      },
      (writer) => writer.putCredential(credential),
    );
    return isRefusal(result) ? result : {};
  },
});
