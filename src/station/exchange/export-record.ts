/** Writes everything that the station knows into a folder: events, tables, pictures, and what they are; whole or not at all. */
import { readFile } from 'node:fs/promises';
import { isAbsolute, join } from 'node:path';
import { stringify } from 'csv-stringify/sync';
import type { RecordedEvent } from '../../domain/event.ts';
import { type Refusal, refusal } from '../../domain/refusal.ts';
import { evidenceFileName } from '../../ledger/evidence-name.ts';
import type { TreeHead } from '../../ledger/ledger.ts';
import { storageRefusal } from '../../ledger/storage-refusal.ts';
import type { OperationContext } from '../operation.ts';
import type { WorkControl } from '../work-jobs.ts';
import { type ExportFile, ExportFolder, isFree, type WrittenFile } from './export-folder.ts';
import { type ExportRow, ExportRows } from './export-rows.ts';
import {
  type ExportTable,
  exportTables,
  exportVersion,
  readTableDescriptions,
  schemaDocument,
  type TableDescription,
  type TableDescriptions,
} from './export-schema.ts';

export interface ExportOutcome {
  readonly folder: string;
  readonly events: number;
  readonly rootHash: string;
  readonly files: number;
  readonly pictures: number;
  /** Pictures that the record names and that are not there, or not as they were kept. */
  readonly picturesLost: number;
}

class Canceled extends Error {
  override readonly name = 'Canceled';
}

/** Events between two looks at whether the export was canceled, and at what waits to be written. */
const eventsAtOnce = 200;

/** `asked` is absolute, and empty or not there yet; a folder of the data folder where it is absent. */
export const exportRecord = async (
  context: OperationContext,
  asked: string | undefined,
  control: WorkControl,
): Promise<ExportOutcome | Refusal> => {
  const head = await context.ledger.head();
  const nextPlace = () => freePlace(join(context.folder, 'exports'), head);
  const place = asked ?? (await nextPlace());
  if (!isAbsolute(place) || !(await isFree(place)))
    return refusal('export-folder-not-empty', { folder: place }, 'folder');
  let folder: ExportFolder | undefined;
  try {
    folder = await ExportFolder.beside(place);
    const outcome = await writeAll(context, folder, head, control);
    stopIfCanceled(control);
    for (let at = place; ; at = await nextPlace()) {
      if (await folder.finishAt(at)) return { folder: at, ...outcome };
      if (asked === undefined) continue;
      await folder.giveUp();
      return refusal('export-folder-not-empty', { folder: place }, 'folder');
    }
  } catch (error) {
    await folder?.giveUp();
    return error instanceof Canceled ? refusal('export-canceled') : storageRefusal(error, place);
  }
};

const freePlace = async (exports: string, { size }: TreeHead): Promise<string> => {
  for (let count = 1; ; count += 1) {
    const place = join(exports, count === 1 ? `record-${size}` : `record-${size}-${count}`);
    if (await isFree(place)) return place;
  }
};

const stopIfCanceled = ({ signal }: WorkControl): void => {
  if (signal.aborted) throw new Canceled();
};

const writeAll = async (
  context: OperationContext,
  folder: ExportFolder,
  head: TreeHead,
  control: WorkControl,
): Promise<Omit<ExportOutcome, 'folder'>> => {
  const tables = await readTableDescriptions(context.productFolder);
  const files = await writeRecord(context, folder, tables, head, control);
  const { pictures, lost } = await writePictures(context, folder, control);
  files.push(...pictures);
  files.push(await writeText(folder, 'schema.json', json(schemaDocument(tables))));
  const readme = await readFile(join(context.productFolder, 'assets', 'export', 'readme.txt'), 'utf8');
  files.push(await writeText(folder, 'README.txt', readme));
  const station = await context.ledger.read((reader) => reader.station());
  const manifest = {
    format: 'SRL Bench export',
    version: exportVersion,
    station: station?.name,
    exportedAt: context.now(),
    record: head,
    picturesLost: lost,
    files,
  };
  await writeText(folder, 'manifest.json', json(manifest));
  return {
    events: head.size,
    rootHash: head.rootHash,
    files: files.length + 1,
    pictures: pictures.length,
    picturesLost: lost.length,
  };
};

const json = (value: unknown): string => `${JSON.stringify(value, undefined, 2)}\n`;

const writeText = async (folder: ExportFolder, path: string, text: string): Promise<WrittenFile> => {
  const file = await folder.open(path);
  file.add(text);
  return file.close();
};

/** Only the events under `head`, whatever is recorded in the meantime. */
const writeRecord = async (
  { ledger }: OperationContext,
  folder: ExportFolder,
  descriptions: TableDescriptions,
  { size }: TreeHead,
  control: WorkControl,
): Promise<WrittenFile[]> => {
  const events = await folder.open('events.jsonl');
  const tables = new Map<ExportTable, ExportFile>();
  const written: WrittenFile[] = [];
  try {
    for (const name of exportTables) {
      const file = await folder.open(`${name}.csv`);
      file.add(`\uFEFF${headingLine(descriptions[name])}`);
      tables.set(name, file);
    }
    const rows = new ExportRows((name, row) => tables.get(name)?.add(csvLine(descriptions[name], row)));
    let done = 0;
    for await (const line of ledger.export()) {
      if (done === size) break;
      done += 1;
      events.add(`${line}\n`);
      rows.take(JSON.parse(line) as RecordedEvent);
      if (done % eventsAtOnce !== 0) continue;
      stopIfCanceled(control);
      control.onProgress({ done, of: size });
      for (const file of [events, ...tables.values()]) if (file.isFull) await file.flush();
    }
    rows.finish();
  } finally {
    for (const file of [events, ...tables.values()]) written.push(await file.close());
  }
  return written;
};

const csvOptions = { record_delimiter: 'windows', escape_formulas: true } as const;

const headingLine = ({ columns }: TableDescription): string =>
  stringify([Object.values(columns).map(({ heading }) => heading)], csvOptions);

/** What a spreadsheet would compute is kept from it by an apostrophe (OWASP, CSV injection). */
const csvLine = ({ columns }: TableDescription, row: ExportRow): string =>
  stringify([Object.keys(columns).map((key) => row[key] ?? '')], csvOptions);

const writePictures = async (
  { evidence }: OperationContext,
  folder: ExportFolder,
  control: WorkControl,
): Promise<{ readonly pictures: readonly WrittenFile[]; readonly lost: readonly string[] }> => {
  const pictures: WrittenFile[] = [];
  const lost: string[] = [];
  for await (const sha256 of evidence.list()) {
    stopIfCanceled(control);
    const bytes = await evidence.get(sha256);
    if (typeof bytes === 'string') {
      lost.push(sha256);
      continue;
    }
    const file = await folder.open(`evidence/${evidenceFileName(sha256, bytes)}`);
    await file.writeAll(bytes);
    pictures.push(await file.close());
  }
  return { pictures, lost };
};
