/** The pictures that the record says are kept, and whether they still are what was kept. */
import { z } from 'zod';
import { type BenchId, calendarDateSchema } from '../domain/brand.ts';
import type { DomainEvent, RecordedEvent } from '../domain/event.ts';
import { findingPictureSchema, keptPictureSchema, type PictureFile } from '../domain/picture.ts';
import type { EvidenceStore } from '../ledger/evidence-store.ts';
import type { LedgerReader } from '../ledger/ledger.ts';
import { thumbnailOf } from './still-picture.ts';

const viewShape = {
  keptOn: calendarDateSchema,
  /** A person's name. */
  keptBy: z.string(),
  state: z.enum(['kept', 'missing', 'changed']),
  /** A JPEG of at most 320 dots a side; absent unless the picture is what was kept. */
  thumbnailBase64: z.string().optional(),
};
export const keptPictureViewSchema = keptPictureSchema.extend(viewShape);
export const findingPictureViewSchema = findingPictureSchema.extend(viewShape);

type Recorded<Type extends DomainEvent['type']> = RecordedEvent & {
  readonly event: Extract<DomainEvent, { type: Type }>;
};
export type RecordedPicture = Recorded<'device.picture-kept'>;
export type RecordedFindingPicture = Recorded<'finding.picture-kept'>;

const isPicture = (recorded: RecordedEvent): recorded is RecordedPicture =>
  recorded.event.type === 'device.picture-kept';

const isFindingPicture = (recorded: RecordedEvent): recorded is RecordedFindingPicture =>
  recorded.event.type === 'finding.picture-kept';

/** True for every event that keeps one picture. */
export const namesPicture = (recorded: RecordedEvent): recorded is RecordedPicture | RecordedFindingPicture =>
  isPicture(recorded) || isFindingPicture(recorded);

/** The hashes of all files of the evidence that an event names: pictures, and documents of held devices. */
export const filesNamedBy = (recorded: RecordedEvent): readonly string[] => {
  if (namesPicture(recorded)) return [recorded.event.sha256];
  const { event } = recorded;
  switch (event.type) {
    case 'evidence.recorded':
      return event.documents.map(({ sha256 }) => sha256);
    case 'device.scrapped':
    case 'fall-case.noted':
      return event.photos.map(({ sha256 }) => sha256);
    default:
      return [];
  }
};

/** Of the device itself, oldest first. */
export const picturesOf = async (
  reader: LedgerReader,
  benchId: BenchId,
): Promise<readonly RecordedPicture[]> => (await reader.eventsOf(benchId)).filter(isPicture);

/** Of every inspection of the device, oldest first. */
export const findingPicturesOf = async (
  reader: LedgerReader,
  benchId: BenchId,
): Promise<readonly RecordedFindingPicture[]> => (await reader.eventsOf(benchId)).filter(isFindingPicture);

/** What became of the file of a picture, with the picture small where it is what was kept. */
export const stateOfPicture = async (
  evidence: EvidenceStore,
  { sha256 }: PictureFile,
): Promise<Pick<z.infer<typeof keptPictureViewSchema>, 'state' | 'thumbnailBase64'>> => {
  const bytes = await evidence.get(sha256);
  if (typeof bytes === 'string') return { state: bytes };
  return { state: 'kept', thumbnailBase64: (await thumbnailOf(bytes)).toString('base64') };
};
