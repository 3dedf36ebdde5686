/** `person.change-own-pin`: a person puts a new PIN in the place of their own, with the one that holds now. */
import { z } from 'zod';
import { decideSetPin } from '../../domain/decide/person.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { personIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { hashPin, isWeakPin } from '../pin.ts';
import { record } from '../record.ts';

export const personChangeOwnPin = defineOperation({
  name: 'person.change-own-pin',
  summary: 'A person changes their own PIN, with the one that holds now.',
  kind: 'command',
  access: everyRole,
  input: z.object({ pin: z.string().max(40), newPin: z.string().max(40) }),
  output: z.object({}),
  run: async (context, { pin, newPin }) => {
    const { person } = context;
    if (person === undefined) return refusal('sign-in-needed');
    if (isWeakPin(newPin)) return refusal('pin-too-weak', {}, 'newPin');
    const wrongPin = await context.pins.check(person, pin, context.now());
    if (wrongPin !== undefined) return wrongPin;
    const { personId } = person;
    const credential = await hashPin(personId, newPin);
    const result = await record(
      context,
      async (reader) => {
        const now = await personIn(reader, personId);
        return isRefusal(now) ? now : decideSetPin(now, { wasSet: true, by: personId });
      },
      (writer) => writer.putCredential(credential),
    );
    return isRefusal(result) ? result : {};
  },
});
