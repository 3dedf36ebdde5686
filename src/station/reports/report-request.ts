/** What a report is asked for with: of what, in which form, in which words. */
import { z } from 'zod';
import { benchIdSchema, calendarDateSchema } from '../../domain/brand.ts';
import { shipmentSchema } from '../../domain/held/return-batch.ts';
import { languageSchema } from '../../domain/message.ts';
import { papers } from '../../reports/paper.ts';
import { returnAsks } from '../../reports/return-asks.ts';
import { deviceFilterSchema } from '../device-filter.ts';
import { heldLists } from './held-lists.ts';

export const reportSubjectSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('inspection'), inspection: z.int().positive() }),
  z.object({ kind: z.literal('device'), benchId: benchIdSchema }),
  z.object({ kind: z.literal('register'), ...deviceFilterSchema.shape }),
  /** In service and due by that day; within the program's warning time where it is absent. */
  z.object({ kind: z.literal('due'), until: calendarDateSchema.optional() }),
  /** What the bench takes in hand in these days; from today on, and all that is planned, where they are absent. */
  z.object({
    kind: z.literal('bench-plan'),
    from: calendarDateSchema.optional(),
    until: calendarDateSchema.optional(),
  }),
  /** Devices out in the field that come due, and training that runs out. */
  z.object({ kind: z.literal('notices') }),
  /** A plan of returns, by the number with which it was begun. */
  z.object({ kind: z.literal('return-plan'), job: z.int().positive() }),
  /** What was done about held devices. */
  z.object({ kind: z.literal('held'), list: z.enum(heldLists) }),
  /** Devices that are held, of one manufacturer. */
  z.object({
    kind: z.literal('return'),
    benchIds: z.array(benchIdSchema).min(1).max(200),
    ask: z.enum(returnAsks).default('evidence'),
    /** The number of the return batch that they travel in, if any. */
    batch: z.int().positive().optional(),
    /** What is declared of their condition and of what was on them. */
    declaration: shipmentSchema.pick({ condition: true, contamination: true }).optional(),
  }),
]);
export type ReportSubject = z.output<typeof reportSubjectSchema>;

/** `ics`: a calendar file, of the plan of the bench alone. */
export const reportFormats = ['pdf', 'csv', 'xlsx', 'ics'] as const;
export type ReportFormat = (typeof reportFormats)[number];

export const reportRequestSchema = z.object({
  of: reportSubjectSchema,
  format: z.enum(reportFormats).default('pdf'),
  language: z.union([languageSchema, z.literal('both')]),
  paper: z.enum(papers).default('a4'),
  /** Absolute, with the ending of the format; a new file in the data folder's `reports` where it is absent. */
  file: z.string().trim().min(1).max(1000).optional(),
  /** Opened with the program that the operating system has for it, where the shell can. */
  open: z.boolean().default(false),
});
export type ReportRequest = z.output<typeof reportRequestSchema>;
