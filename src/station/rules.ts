/** The procedures and programs that the product ships, read once and kept with the hash of their data. */
import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { type DeskRules, deskRulesSchema } from '../domain/custody/desk-rules.ts';
import { grouped } from '../domain/grouped.ts';
import { type ReleaseRules, releaseRulesSchema } from '../domain/held/release-rules.ts';
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
  /** The one that holds while none is adopted: the documented inspection once a year. */
  readonly shipped: Program;
  /** The newest version of each that the product ships, to adopt as they are or to begin with. */
  readonly presets: readonly Program[];
  /** What is asked at the desk. */
  readonly desk: DeskRules;
  /** What must exist before a held device may be inspected for its return. */
  readonly release: ReleaseRules;
  /** The procedure with which an inspection began, or why it cannot be continued. */
  procedureOf(reference: Inspection['procedure']): Procedure | Refusal;
}

/** Throws where a file of the product itself is not valid: that is a defect of the product, not of a person's input. */
export const loadRules = async (assetsFolder: string): Promise<Rules> => {
  const procedures = (await jsonFiles(join(assetsFolder, 'procedures'))).map(installed);
  const presets = newestOfEachKey(programsFrom(await jsonFiles(join(assetsFolder, 'programs'))));
  const desk = newest(
    (await jsonFiles(join(assetsFolder, 'desk'))).map((text) => deskRulesSchema.parse(JSON.parse(text))),
    ({ version }) => version,
  );
  const release = newest(
    (await jsonFiles(join(assetsFolder, 'programs', 'release'))).map((text) =>
      releaseRulesSchema.parse(JSON.parse(text)),
    ),
    ({ version }) => version,
  );
  const current = newest(procedures, ({ procedure }) => procedure.version);
  const shipped = newest(
    presets.filter(({ key }) => key === shippedKey),
    ({ version }) => version,
  );
  return {
    current,
    shipped,
    presets,
    desk,
    release,
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

const shippedKey = 'annual';

const programNameSchema = z.object({ key: z.string(), version: z.int() });
const programFileSchema = z.looseObject({
  ...programNameSchema.shape,
  basedOn: programNameSchema.optional(),
});
type ProgramFile = z.infer<typeof programFileSchema>;

/** A program that is `basedOn` another one says only what it says differently. */
const programsFrom = (texts: readonly string[]): readonly Program[] => {
  const files = texts.map((text) => programFileSchema.parse(JSON.parse(text)));
  const whole = ({ basedOn, ...own }: ProgramFile): object => {
    const base = files.find(({ key, version }) => key === basedOn?.key && version === basedOn.version);
    if (basedOn !== undefined && base === undefined)
      throw new Error(
        `The program ${own.key} is based on ${basedOn.key} v${basedOn.version}, which the product does not ship.`,
      );
    return base === undefined ? own : { ...whole(base), ...own };
  };
  return files.map((file) => programSchema.parse(whole(file)));
};

/**
 * In the order of their files. Earlier versions are kept because records name them; a program that was adopted stands whole
 * in the record and does not change with these.
 */
const newestOfEachKey = (programs: readonly Program[]): readonly Program[] =>
  [...grouped(programs, ({ key }) => key).values()].map((versions) =>
    newest(versions, ({ version }) => version),
  );

const installed = (text: string): InstalledProcedure => {
  const procedure = procedureSchema.parse(JSON.parse(text));
  const sha256 = createHash('sha256').update(text.replaceAll('\r\n', '\n')).digest('hex');
  return { procedure, reference: { key: procedure.key, version: procedure.version, sha256 } };
};

const newest = <Item>(items: readonly Item[], version: (item: Item) => number): Item => {
  const [first, ...rest] = items;
  if (first === undefined)
    throw new Error(
      'The product ships no procedure, no program, no questions of the desk or no release rules.',
    );
  return rest.reduce((best, item) => (version(item) > version(best) ? item : best), first);
};
