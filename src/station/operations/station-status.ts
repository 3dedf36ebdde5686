/** `station.status`: what every screen needs first: whether there is a station, who is signed in, and the numbers of the day. */
import { z } from 'zod';
import { type CalendarDate, calendarDateSchema } from '../../domain/brand.ts';
import { addDays } from '../../domain/calendar.ts';
import { backupState, backupStateSchema } from '../../domain/keeping.ts';
import { lengthUnitSchema } from '../../domain/length.ts';
import { isAdministrator, type Person, roleSchema } from '../../domain/person.ts';
import { pinNoticeSchema, pinNotices } from '../../domain/pin-tries.ts';
import { programInForce } from '../../domain/program-in-force.ts';
import { scannerSchema } from '../../domain/scanner/scanner.ts';
import { unattendedMinutesAtFirst, unattendedMinutesSchema } from '../../domain/unattended.ts';
import { defineOperation } from '../operation.ts';
import { personView, personViewSchema } from '../person-view.ts';
import { trainingNotices, trainingNoticeViewSchema } from '../training-notices.ts';
import { deviceSummary, deviceSummarySchema } from '../views.ts';

const noticesOf = (people: readonly Person[], today: CalendarDate) => ({
  trainingNotices: trainingNotices(people, today),
  pinNotices: [...pinNotices(people, today)],
});

const demoBadges = (people: readonly Person[]) =>
  people.filter(({ left }) => left === undefined).map(({ name, badge, roles }) => ({ name, badge, roles }));

export const stationStatus = defineOperation({
  name: 'station.status',
  summary: 'Whether there is a station, who is signed in, and the numbers of the day.',
  kind: 'query',
  access: 'anyone',
  input: z.object({}),
  output: z.discriminatedUnion('state', [
    z.object({ state: z.literal('empty') }),
    z.object({
      state: z.literal('ready'),
      name: z.string(),
      timeZone: z.string(),
      lengthUnit: lengthUnitSchema,
      demo: z.boolean(),
      today: calendarDateSchema,
      person: personViewSchema.optional(),
      /** Whose window it is while it is locked; nobody counts as signed in then. */
      lockedFor: z.object({ name: z.string(), roles: z.array(roleSchema) }).optional(),
      /** After so many minutes without anybody it is locked. */
      unattendedMinutes: unattendedMinutesSchema,
      /** The badges to try in the demo; absent at a real station. */
      demoBadges: z
        .array(z.object({ name: z.string(), badge: z.string(), roles: z.array(z.string()) }))
        .optional(),
      /** People whose training has run out or will within 30 days, the earliest first; only for an administrator. */
      trainingNotices: z.array(trainingNoticeViewSchema).optional(),
      /** Whose PIN was guessed at in the last days; only for an administrator. */
      pinNotices: z.array(pinNoticeSchema).optional(),
      dueSoonDays: z.int(),
      counts: z.object({
        devices: z.int(),
        inService: z.int(),
        neverInspected: z.int(),
        overdue: z.int(),
        dueSoon: z.int(),
        held: z.int(),
        openInspections: z.int(),
        unprovedTags: z.int(),
        out: z.int(),
        ready: z.int(),
        overdueReturns: z.int(),
      }),
      /** Inspections that were begun and not yet signed. */
      open: z.array(z.object({ inspection: z.int(), device: deviceSummarySchema, answered: z.int() })),
      /** Whether backups are made, as the start screen says it. */
      backup: backupStateSchema,
      /** True where the shell can open a file with the operating system. */
      opensFiles: z.boolean(),
      /** How the scanner types, once it was learnt. */
      scanner: scannerSchema.optional(),
    }),
  ]),
  run: (context) =>
    context.ledger.read(async (reader) => {
      const station = await reader.station();
      if (station === undefined) return { state: 'empty' as const };
      const today = context.occasion(station).on;
      const { lockedFor } = context.session;
      const { dueSoonDays } = programInForce(station, context.rules.shipped).program;
      const open = [];
      for (const inspection of await reader.openInspections()) {
        const row = await reader.device(inspection.benchId);
        if (row === undefined) continue;
        const device = deviceSummary(row, today, dueSoonDays);
        open.push({
          inspection: inspection.inspection,
          device,
          answered: Object.keys(inspection.answers).length,
        });
      }
      return {
        state: 'ready' as const,
        name: station.name,
        timeZone: station.timeZone,
        lengthUnit: station.lengthUnit,
        demo: station.demo,
        today,
        ...(context.person === undefined ? {} : { person: await personView(reader, context.person, today) }),
        ...(lockedFor === undefined ? {} : { lockedFor: { name: lockedFor.name, roles: lockedFor.roles } }),
        unattendedMinutes: station.unattendedMinutes ?? unattendedMinutesAtFirst,
        ...(station.demo ? { demoBadges: demoBadges(await reader.people()) } : {}),
        ...(context.person !== undefined && isAdministrator(context.person)
          ? noticesOf(await reader.people(), today)
          : {}),
        dueSoonDays,
        counts: await reader.counts(today, addDays(today, dueSoonDays)),
        open,
        backup: backupState(station, today),
        opensFiles: context.openFile !== undefined,
        ...(station.scanner === undefined ? {} : { scanner: station.scanner }),
      };
    }),
});
