/** `program.adopt`: an administrator signs the employer's written rules with their PIN; from then on they hold. */
import { z } from 'zod';
import { calendarDateSchema } from '../../domain/brand.ts';
import { boundTrainings } from '../../domain/decide/bound-trainings.ts';
import { decideAdoptProgram } from '../../domain/decide/program.ts';
import { programSchema } from '../../domain/program.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';

export const programAdopt = defineOperation({
  name: 'program.adopt',
  summary: "Adopts the employer's program, signed with a PIN.",
  kind: 'command',
  access: ['administrator'],
  input: z.object({
    /** Without its version, which is the next one of its key. */
    program: programSchema.omit({ version: true }),
    /** Today where it is absent. */
    effectiveFrom: calendarDateSchema.optional(),
    pin: z.string().max(40),
  }),
  output: z.object({
    program: programSchema.pick({ key: true, version: true }),
    effectiveFrom: calendarDateSchema,
    /** Devices in service that are overdue under it. */
    overdue: z.int(),
    /** People whose training ends sooner under it than their certificate says. */
    boundTrainings: z.int(),
  }),
  run: async (context, { program: settings, effectiveFrom, pin }) => {
    const { person, rules } = context;
    if (person === undefined) return refusal('sign-in-needed');
    const wrongPin = await context.pins.check(person, pin, context.now());
    if (wrongPin !== undefined) return wrongPin;
    const result = await record(context, async (reader, { on }) => {
      const station = await stationIn(reader);
      if (isRefusal(station)) return station;
      const modelSheets = await reader.modelSheets();
      const place = {
        station,
        presets: rules.presets,
        shipped: rules.shipped,
        releaseRules: rules.release,
        modelSheets,
      };
      const adopted = decideAdoptProgram({ settings, effectiveFrom: effectiveFrom ?? on }, place, on);
      return isRefusal(adopted)
        ? adopted
        : [...adopted, ...boundTrainings(await reader.people(), settings.trainingValidityMonths)];
    });
    if (isRefusal(result)) return result;
    const [adopted, ...designations] = result;
    if (adopted?.event.type !== 'program.adopted') throw new Error('An adoption comes first.');
    const { key, version } = adopted.event.program;
    const { overdue } = await context.ledger.read((reader) => reader.counts(adopted.on, adopted.on));
    return {
      program: { key, version },
      effectiveFrom: adopted.event.effectiveFrom,
      overdue,
      boundTrainings: designations.length,
    };
  },
});
