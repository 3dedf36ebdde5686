/** What an import job ends in. */
import type { PreparedImport } from './prepare-import.ts';
import type { ImportedFleet } from './record-import.ts';

export type ImportOutcome =
  | { readonly kind: 'previewed'; readonly prepared: PreparedImport }
  | { readonly kind: 'imported'; readonly imported: ImportedFleet };
