/** `keeping.show`: how the record is kept safe, and what went wrong with that. */
import { z } from 'zod';
import { calendarDateSchema, instantSchema } from '../../domain/brand.ts';
import { backupMadeSchema, backupState, backupStateSchema, keepingSchema } from '../../domain/keeping.ts';
import { isRefusal, type Refusal } from '../../domain/refusal.ts';
import { backupFolderFault, backupsIn, isOnSameDisk, stationMark } from '../keeping/backup-folder.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { sentenceOf } from '../sentence.ts';

export const keepingShow = defineOperation({
  name: 'keeping.show',
  summary: 'How the record is kept safe: where backups go, which there are, and what went wrong.',
  kind: 'query',
  access: everyRole,
  input: z.object({}),
  output: z.object({
    state: backupStateSchema,
    keeping: keepingSchema.extend({ since: calendarDateSchema }).optional(),
    lastBackup: backupMadeSchema.extend({ on: calendarDateSchema, at: instantSchema }).optional(),
    /** Why the last backup failed, in words, until one succeeds. */
    trouble: z.object({ at: instantSchema, sentence: z.string() }).optional(),
    folder: z.discriminatedUnion('state', [
      z.object({ state: z.literal('not chosen') }),
      z.object({ state: z.literal('not there'), sentence: z.string() }),
      z.object({
        state: z.literal('there'),
        /** The disk of the record: a backup there is lost with it. */
        onSameDisk: z.boolean(),
        /** Names of files, the newest first. */
        backups: z.array(z.object({ fileName: z.string(), on: calendarDateSchema })),
      }),
    ]),
  }),
  run: async (context) => {
    const station = await context.ledger.read(stationIn);
    if (isRefusal(station)) return station;
    const { keeping, lastBackup } = station;
    const { trouble } = context.keeper;
    const sentence = (refused: Refusal): string => sentenceOf(refused, context.language);
    return {
      state: backupState(station, context.occasion(station).on),
      ...(keeping === undefined ? {} : { keeping }),
      ...(lastBackup === undefined ? {} : { lastBackup }),
      ...(trouble === undefined ? {} : { trouble: { at: trouble.at, sentence: sentence(trouble.refusal) } }),
      folder: await folderView(keeping?.backupFolder, station.stationId, context.folder, sentence),
    };
  },
});

const folderView = async (
  backupFolder: string | undefined,
  stationId: string,
  dataFolder: string,
  sentence: (refused: Refusal) => string,
) => {
  if (backupFolder === undefined) return { state: 'not chosen' as const };
  const fault = await backupFolderFault(backupFolder);
  if (fault !== undefined) return { state: 'not there' as const, sentence: sentence(fault) };
  const backups = await backupsIn(backupFolder, stationMark(stationId));
  return {
    state: 'there' as const,
    onSameDisk: await isOnSameDisk(backupFolder, dataFolder),
    backups: backups.map(({ fileName, on }) => ({ fileName, on })),
  };
};
