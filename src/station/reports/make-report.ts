/** Makes a report and puts it where it was asked for: whole, under its name, or not at all. */
import { randomUUID } from 'node:crypto';
import { access, mkdir, open, rename, rm } from 'node:fs/promises';
import { dirname, extname, isAbsolute, join } from 'node:path';
import { isRefusal, type Refusal, refusal } from '../../domain/refusal.ts';
import { storageRefusal } from '../../ledger/storage-refusal.ts';
import type { OperationContext } from '../operation.ts';
import type { WorkControl } from '../work-jobs.ts';
import { composeReport } from './compose-report.ts';
import type { ReportRequest } from './report-request.ts';

export interface ReportOutcome {
  readonly path: string;
  readonly fileName: string;
  readonly pages?: number;
  readonly rows?: number;
  /** The operating system was asked to open it. */
  readonly opened: boolean;
}

export const makeReport = async (
  context: OperationContext,
  request: ReportRequest,
  control: WorkControl,
): Promise<ReportOutcome | Refusal> => {
  const { file, format } = request;
  if (file !== undefined && !(isAbsolute(file) && extname(file).toLowerCase() === `.${format}`))
    return refusal('report-file-name', { file, format }, 'file');
  const folder = file === undefined ? join(context.folder, 'reports') : dirname(file);
  try {
    const composed = await composeReport(context, request, control);
    if (isRefusal(composed)) return composed;
    const { bytes, fileName, ...counts } = composed;
    await mkdir(folder, { recursive: true });
    const path = file ?? (await freePath(folder, fileName));
    control.signal.throwIfAborted();
    await writeWhole(path, bytes);
    const opened = request.open && context.openFile !== undefined;
    if (opened) await context.openFile?.(path);
    return { path, fileName, ...counts, opened };
  } catch (error) {
    return control.signal.aborted ? refusal('report-canceled') : storageRefusal(error, folder);
  }
};

/** A report that lies there already may be open in another program, and is left alone. */
const freePath = async (folder: string, fileName: string): Promise<string> => {
  const ending = extname(fileName);
  const name = fileName.slice(0, -ending.length);
  for (let count = 1; ; count += 1) {
    const path = join(folder, count === 1 ? fileName : `${name}-${count}${ending}`);
    const isTaken = await access(path).then(
      () => true,
      () => false,
    );
    if (!isTaken) return path;
  }
};

const writeWhole = async (path: string, bytes: Uint8Array): Promise<void> => {
  const unfinished = join(dirname(path), `.${randomUUID()}.part`);
  try {
    const file = await open(unfinished, 'wx');
    try {
      await file.writeFile(bytes);
      await file.sync();
    } finally {
      await file.close();
    }
    await rename(unfinished, path);
  } finally {
    await rm(unfinished, { force: true });
  }
};
