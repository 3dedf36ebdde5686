/** What a backup is: a ZIP file of the record, the kept pictures, and this list of them. */
import { z } from 'zod';
import { instantSchema } from '../../domain/brand.ts';
import { recordHeadSchema } from '../../domain/keeping.ts';

export const manifestPath = 'backup.json';
export const recordPath = 'ledger.sqlite';
export const picturePath = (sha256: string): string => `evidence/${sha256}.jpg`;

/** The hash in the path of a picture; `undefined` where the path is none. */
export const pictureHash = (path: string): string | undefined =>
  /^evidence\/([0-9a-f]{64})\.jpg$/.exec(path)?.[1];

export const backupVersion = 1;

export const backupManifestSchema = z.object({
  format: z.literal('SRL Bench backup'),
  version: z.number().int().positive(),
  madeAt: instantSchema,
  station: z.object({ stationId: z.string(), name: z.string() }),
  record: recordHeadSchema,
  files: z.array(z.object({ path: z.string(), bytes: z.number().int().nonnegative(), sha256: z.string() })),
});
export type BackupManifest = z.infer<typeof backupManifestSchema>;
