/** What was found when the station was looked over: of which subject, how it stands, and the key of its sentence. */
import { z } from 'zod';
import type health from '../../../assets/messages/en/health.json';

/** In the order in which they are told. `camera` and `window` are known to the page alone. */
export const healthSubjects = [
  'runtime',
  'shell',
  'browser',
  'page',
  'assets',
  'memory',
  'data folder',
  'disk',
  'record',
  'checkpoints',
  'backups',
  'clock',
  'printers',
  'scanner',
  'camera',
  'faults',
] as const;
export const healthSubjectSchema = z.enum(healthSubjects);
export type HealthSubject = z.infer<typeof healthSubjectSchema>;

/** The gravest first. `not known`: nobody could say, which is neither good nor wrong. */
export const healthStates = ['wrong', 'attention', 'not known', 'good'] as const;
export const healthStateSchema = z.enum(healthStates);
export type HealthState = z.infer<typeof healthStateSchema>;

/** Under `found` in `health.json`; what to do, where there is something, stands under `todo` by the same key. */
export type HealthKey = keyof typeof health.found;

/** What names a person, a place of the PC or a printer is `private`: shown on the screen, and left out of a report. */
export const healthValueSchema = z.union([z.string(), z.number(), z.object({ private: z.string() })]);
export type HealthValue = z.infer<typeof healthValueSchema>;
export type HealthValues = Readonly<Record<string, HealthValue>>;

export interface Finding {
  readonly subject: HealthSubject;
  readonly state: HealthState;
  readonly says: HealthKey;
  readonly values: HealthValues;
}

/** A finding with its words, in the language of whoever reads it. */
export interface WordedFinding extends Finding {
  readonly found: string;
  readonly todo?: string | undefined;
}

export const finding = (
  subject: HealthSubject,
  state: HealthState,
  says: HealthKey,
  values: HealthValues = {},
): Finding => ({ subject, state, says, values });

export const isPrivate = (value: HealthValue): value is { private: string } => typeof value === 'object';

/** The values as they are said on the screen. */
export const shownValues = (values: HealthValues): Readonly<Record<string, string | number>> =>
  Object.fromEntries(
    Object.entries(values).map(([name, value]) => [name, isPrivate(value) ? value.private : value]),
  );

/** What stands in a report where something private was left out. */
export const leftOut = '…';

export const withoutPrivate = (found: Finding): Finding => ({
  subject: found.subject,
  state: found.state,
  says: found.says,
  values: Object.fromEntries(
    Object.entries(found.values).map(([name, value]) => [name, isPrivate(value) ? leftOut : value]),
  ),
});

/** The gravest first, and of one state in the order of the subjects. */
export const byGravity = <Found extends Finding>(findings: readonly Found[]): readonly Found[] =>
  findings.toSorted(
    (a, b) =>
      healthStates.indexOf(a.state) - healthStates.indexOf(b.state) ||
      healthSubjects.indexOf(a.subject) - healthSubjects.indexOf(b.subject),
  );

export const isAnythingWrong = (findings: readonly Finding[]): boolean =>
  findings.some(({ state }) => state === 'wrong');
