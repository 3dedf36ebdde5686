/** The answers file of `inspect`: an inspection written down as a person would write it, checked as a whole. */
import { z } from 'zod';
import { type Answers, findingSchema } from '../domain/answer.ts';
import { metresSchema, millimetresSchema } from '../domain/brand.ts';
import { mostPicturesOfCheck } from '../domain/decide/picture.ts';
import { lengthUnitSchema, parseDiameter, parseLength } from '../domain/length.ts';
import { markingStateSchema } from '../domain/marking.ts';
import type { Language } from '../domain/message.ts';
import { refusal } from '../domain/refusal.ts';
import { wordsIn } from '../host/words.ts';
import { failureOf } from './failure.ts';
import { readJson } from './files.ts';

export interface AnswersFile {
  readonly benchId?: string | undefined;
  readonly code?: string | undefined;
  readonly badge?: string | undefined;
  readonly answers: Answers;
  /** Picture files by check, as paths beside the answers file. */
  readonly pictures: Readonly<Record<string, readonly string[]>>;
  readonly sign: boolean;
}

/** Fails with the field at fault; whether a check takes an answer is for the procedure to say. */
export const readAnswersFile = async (path: string, language: Language): Promise<AnswersFile> => {
  const read = schemaIn(language).safeParse(await readJson(path, language));
  if (read.success) return read.data;
  const [issue] = read.error.issues;
  const field =
    issue?.path.join('.') || (issue?.code === 'unrecognized_keys' ? issue.keys.join(', ') : 'JSON');
  throw failureOf(
    refusal('answers-file-invalid', { path, field, why: issue?.message ?? '' }, field),
    language,
  );
};

const schemaIn = (language: Language) => {
  const words = wordsIn(language);
  const length = lengthSchema(words('length-shape'));
  const finding = z
    .strictObject({ ...findingSchema.omit({ positionM: true }).shape, position: length.optional() })
    .transform(({ defect, position, note }) => ({
      defect,
      ...(position === undefined ? {} : { positionM: position }),
      ...(note === undefined ? {} : { note }),
    }));
  const reading = z.strictObject({ position: length, diameter: diameterSchema(words('diameter-shape')) });
  const written = z.union(
    [
      z.literal('good').transform(() => ({ kind: 'good' as const })),
      markingStateSchema.transform((state) => ({ kind: 'marking' as const, state })),
      z
        .strictObject({ defects: z.array(finding).min(1).max(50) })
        .transform(({ defects }) => ({ kind: 'defects' as const, findings: defects })),
      z
        .strictObject({ length })
        .transform((answer) => ({ kind: 'length' as const, confirmedM: answer.length })),
      z.strictObject({ diameters: z.array(reading).max(50) }).transform(({ diameters }) => ({
        kind: 'diameters' as const,
        readings: diameters.map(({ position, diameter }) => ({ positionM: position, diameterMm: diameter })),
      })),
    ],
    { error: () => words('answer-shape') },
  );
  return z
    .strictObject({
      benchId: z.string().optional(),
      code: z.string().optional(),
      badge: z.string().optional(),
      answers: z.record(z.string(), written),
      pictures: z.record(z.string(), z.array(z.string().min(1)).min(1).max(mostPicturesOfCheck)).default({}),
      sign: z.boolean().default(false),
    })
    .refine(({ benchId, code }) => benchId === undefined || code === undefined, {
      path: ['code'],
      error: () => words('one-device-only'),
    });
};

/** Metres as a number, or a text with its unit, `3.2 m` or `50 ft`. */
const lengthSchema = (error: string) =>
  z
    .union([z.number(), z.string()], { error: () => error })
    .transform((value, context) => {
      if (typeof value === 'number') return value;
      const [, amount, unit] = /^(.+?)\s*(m|ft)$/.exec(value.trim()) ?? [];
      const lengthM = amount === undefined ? undefined : parseLength(amount, lengthUnitSchema.parse(unit));
      if (lengthM !== undefined) return Number(lengthM);
      context.addIssue({ code: 'custom', message: error });
      return z.NEVER;
    })
    .pipe(metresSchema);

/** Millimetres as a number, or a text with its unit, `4.7 mm` or `0.185 in`. */
const diameterSchema = (error: string) =>
  z
    .union([z.number(), z.string()], { error: () => error })
    .transform((value, context) => {
      if (typeof value === 'number') return value;
      const diameterMm = parseDiameter(value, 'mm');
      if (diameterMm !== undefined) return Number(diameterMm);
      context.addIssue({ code: 'custom', message: error });
      return z.NEVER;
    })
    .pipe(millimetresSchema);
