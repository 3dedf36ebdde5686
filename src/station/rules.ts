/** The procedures and programs that the product ships, read once and kept with the hash of their data. */
import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Inspection } from '../domain/inspection.ts';
import { type Procedure, procedureSchema } from '../domain/procedure.ts';
import { type Program, programSchema } from '../domain/program.ts';
import { type Refusal, refusal } from '../domain/refusal.ts';

export interface InstalledProcedure {
  readonly procedure: Procedure;
  readonly reference: Inspection['procedure'];
}

export interface Rules {
  /** The latest version of the procedure for cable self-retracting lifelines. */
  readonly current: InstalledProcedure;
  readonly program: Program;
  /** The procedure with which an inspection began, or why it cannot be continued. */
  procedureOf(reference: Inspection['procedure']): Procedure | Refusal;
}

/** Throws where a file of the product itself is not valid: that is a defect of the product, not of a person's input. */
export const loadRules = async (assetsFolder: string): Promise<Rules> => {
  const procedures = (await jsonFiles(join(assetsFolder, 'procedures'))).map(installed);
  const programs = (await jsonFiles(join(assetsFolder, 'programs'))).map((text) =>
    programSchema.parse(JSON.parse(text)),
  );
  const current = newest(procedures, ({ procedure }) => procedure.version);
  const program = newest(programs, ({ version }) => version);
  return {
    current,
    program,
    procedureOf: (reference) => {
      const named = `${reference.key} v${reference.version}`;
      const found = procedures.find(
        ({ procedure }) => procedure.key === reference.key && procedure.version === reference.version,
      );
      if (found === undefined) return refusal('procedure-unknown', { procedure: named });
      return found.reference.sha256 === reference.sha256
        ? found.procedure
        : refusal('procedure-changed', { procedure: named });
    },
  };
};

const jsonFiles = async (folder: string): Promise<readonly string[]> => {
  const names = (await readdir(folder)).filter((name) => name.endsWith('.json')).sort();
  return Promise.all(names.map((name) => readFile(join(folder, name), 'utf8')));
};

const installed = (text: string): InstalledProcedure => {
  const procedure = procedureSchema.parse(JSON.parse(text));
  const sha256 = createHash('sha256').update(text.replaceAll('\r\n', '\n')).digest('hex');
  return { procedure, reference: { key: procedure.key, version: procedure.version, sha256 } };
};

const newest = <Item>(items: readonly Item[], version: (item: Item) => number): Item => {
  const [first, ...rest] = items;
  if (first === undefined) throw new Error('The product ships no procedure or no program.');
  return rest.reduce((best, item) => (version(item) > version(best) ? item : best), first);
};
