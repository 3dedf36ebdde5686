/** `record.amendable`: what can be corrected of a device or a person, with the numbers of the entries that say it. */
import { z } from 'zod';
import { answerSchema } from '../../domain/answer.ts';
import { benchIdSchema, calendarDateSchema } from '../../domain/brand.ts';
import type { Device } from '../../domain/device.ts';
import { isRefusal } from '../../domain/refusal.ts';
import type { LedgerReader } from '../../ledger/ledger.ts';
import { latestAnswer } from '../latest-answer.ts';
import { deviceIn, personIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { hiddenInspection } from '../reinspections/blindness.ts';

const deviceEntry = z.object({
  field: z.enum(['serial', 'dateOfManufacture', 'modelSheet', 'regularUser']),
  amends: z.int(),
  /** As the record says it now: a model sheet and a regular user by their ID. Absent where there is none. */
  value: z.string().optional(),
});

const signedInspection = z.object({
  inspection: z.int(),
  signedOn: calendarDateSchema,
  answers: z.array(z.object({ check: z.string(), amends: z.int(), answer: answerSchema })),
});

export const recordAmendable = defineOperation({
  name: 'record.amendable',
  summary: 'What can be corrected of a device or a person, with the numbers of the entries that say it.',
  kind: 'query',
  access: everyRole,
  input: z.union([z.object({ benchId: benchIdSchema }), z.object({ personId: z.string() })]),
  output: z.object({
    device: z.array(deviceEntry).optional(),
    /** Newest first. */
    inspections: z.array(signedInspection).optional(),
    name: z.object({ amends: z.int(), value: z.string() }).optional(),
  }),
  run: (context, input) =>
    context.ledger.read(async (reader) => {
      if ('benchId' in input) {
        const row = await deviceIn(reader, input.benchId);
        return isRefusal(row)
          ? row
          : ofDevice(reader, row.device, await hiddenInspection(reader, row.device, context));
      }
      const person = await personIn(reader, input.personId);
      if (isRefusal(person)) return person;
      const named = person.history?.findLast(
        ({ event }) => event.type === 'person.added' || event.type === 'person.name-changed',
      );
      return named === undefined ? {} : { name: { amends: named.seq, value: person.name } };
    }),
});

const ofDevice = async (reader: LedgerReader, device: Device, hidden: number | undefined) => {
  const events = await reader.eventsOf(device.benchId);
  const registered = events.find(({ event }) => event.type === 'device.registered');
  const values = [
    ['serial', device.serial],
    ['dateOfManufacture', device.dateOfManufacture],
    ['modelSheet', device.modelSheetId],
    ['regularUser', device.regularUserId],
  ] as const;
  const inspections = (await reader.inspectionsOf(device.benchId)).flatMap(
    ({ inspection, signed, answers }) => {
      if (signed === undefined || inspection === hidden) return [];
      const answered = Object.entries(answers).flatMap(([check, { answer }]) => {
        const said = latestAnswer(events, inspection, check);
        return said === undefined ? [] : [{ check, amends: said.seq, answer }];
      });
      return [{ inspection, signedOn: signed.on, answers: answered }];
    },
  );
  return {
    device:
      registered === undefined
        ? []
        : values.map(([field, value]) => ({
            field,
            amends: registered.seq,
            ...(value === undefined ? {} : { value }),
          })),
    inspections,
  };
};
