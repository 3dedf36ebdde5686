/**
 * Puts a restored record in the place of the one of a data folder, in steps that can be taken up again wherever they broke
 * off: what was there is moved aside, never deleted.
 */
import { access, mkdir, readFile, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { evidenceFolderName } from '../evidence-folder.ts';
import { syncFolder, writeThrough } from '../write-through.ts';

const planName = 'restore-plan.json';
const planSchema = z.object({ prepared: z.string(), aside: z.string() });
export type RestorePlan = z.infer<typeof planSchema>;

/** From now on the next opening of the folder puts the record in place. `prepared` and `aside` are names within the folder. */
export const planRestore = (folder: string, plan: RestorePlan): Promise<void> =>
  writeThrough(join(folder, planName), Buffer.from(JSON.stringify(plan)));

/**
 * Takes up a planned restore. The caller holds the lock of the folder, and the record is not open. The record goes last in
 * and last out, so that what is in its place says how far the steps came. `record` is the name of its file.
 */
export const settleRestore = async (folder: string, record: string): Promise<void> => {
  const plan = await planIn(folder);
  if (plan === undefined) return;
  const [prepared, aside] = [join(folder, plan.prepared), join(folder, plan.aside)];
  await mkdir(aside, { recursive: true });
  if (await exists(join(prepared, record))) {
    if (await exists(join(folder, record))) {
      for (const name of [`${record}-wal`, `${record}-shm`, evidenceFolderName, record])
        await move(name, folder, aside);
    }
    for (const name of [evidenceFolderName, record]) await move(name, prepared, folder);
  }
  await rm(join(folder, planName));
  await syncFolder(folder);
  await rm(prepared, { recursive: true, force: true });
};

const planIn = async (folder: string): Promise<RestorePlan | undefined> => {
  const text = await readFile(join(folder, planName), 'utf8').catch(() => undefined);
  return text === undefined ? undefined : planSchema.parse(JSON.parse(text));
};

const move = async (name: string, from: string, to: string): Promise<void> => {
  if (!(await exists(join(from, name)))) return;
  await rename(join(from, name), join(to, name));
  await syncFolder(from);
  await syncFolder(to);
};

const exists = (path: string): Promise<boolean> =>
  access(path).then(
    () => true,
    () => false,
  );
