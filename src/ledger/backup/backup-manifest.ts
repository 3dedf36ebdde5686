/** What a backup is: a ZIP file of the record, the kept pictures and documents, and this list of them. */
import { z } from 'zod';
import { instantSchema } from '../../domain/brand.ts';
import { recordHeadSchema } from '../../domain/keeping.ts';
import { evidenceFileName, hashInFileName } from '../evidence-name.ts';

export const manifestPath = 'backup.json';
export const recordPath = 'ledger.sqlite';
export const evidencePath = (sha256: string, bytes: Uint8Array): string =>
  `evidence/${evidenceFileName(sha256, bytes)}`;

/** The hash in the path of a kept picture or document; `undefined` where the path is none. */
export const evidenceHash = (path: string): string | undefined =>
  path.startsWith('evidence/') ? hashInFileName(path.slice('evidence/'.length)) : undefined;

/** In version 1 documents lay under the ending of pictures. */
export const backupVersion = 2;

export const backupManifestSchema = z.object({
  format: z.literal('SRL Bench backup'),
  version: z.int().positive(),
  madeAt: instantSchema,
  station: z.object({ stationId: z.string(), name: z.string() }),
  record: recordHeadSchema,
  files: z.array(z.object({ path: z.string(), bytes: z.int().nonnegative(), sha256: z.string() })),
});
export type BackupManifest = z.infer<typeof backupManifestSchema>;
