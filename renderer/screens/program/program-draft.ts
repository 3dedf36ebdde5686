/** A program as it is typed, and what is wrong with it before the station is asked. */
import { inspectionChoice, revalidationChoice } from '../../../src/domain/due/due-rules.ts';
import { type TypeOfUse, typesOfUse } from '../../../src/domain/due/type-of-use.ts';
import type { StrictRelease } from '../../../src/domain/held/release-rules.ts';
import type { Language } from '../../../src/domain/message.ts';
import type { Program, RemovalGround } from '../../../src/domain/program.ts';
import { groundsOf } from './ground-draft.ts';

export interface UseDraft {
  readonly inspection: string;
  readonly revalidation: string;
}

export interface ProgramDraft {
  readonly title: string;
  readonly document: string;
  readonly interval: string;
  readonly isByUse: boolean;
  readonly uses: Readonly<Record<TypeOfUse, UseDraft>>;
  readonly jurisdictions: Program['jurisdictions'];
  readonly employerRules: Program['employerRules'];
  readonly monthEnd: boolean;
  readonly missed: Program['missedInspection']['rule'];
  readonly grace: string;
  readonly training: string;
  readonly dueSoon: string;
  readonly retention: string;
  readonly languages: readonly Language[];
  readonly grounds: readonly RemovalGround[];
  readonly release: readonly StrictRelease[];
  /** Days; empty for the usual ones. */
  readonly reinspection: string;
}

const useDraft = (use: TypeOfUse, program: Program): UseDraft => ({
  inspection: String(inspectionChoice(use, program)),
  revalidation: String(revalidationChoice(use, program)),
});

export const draftOf = (
  program: Program,
  groundsOfTrade: readonly RemovalGround[],
  language: Language,
): ProgramDraft => ({
  title: program.title[language],
  document:
    program.inspectionInterval.source.mark === 'employer' ? program.inspectionInterval.source.citation : '',
  interval: String(program.inspectionInterval.months),
  isByUse: program.typesOfUse !== undefined,
  uses: {
    'infrequent to light': useDraft('infrequent to light', program),
    'moderate to heavy': useDraft('moderate to heavy', program),
    'severe to continuous': useDraft('severe to continuous', program),
  },
  jurisdictions: program.jurisdictions,
  employerRules: program.employerRules,
  monthEnd: program.monthEnd,
  missed: program.missedInspection.rule,
  grace: String(program.missedInspection.graceDays),
  training: program.trainingValidityMonths === undefined ? '' : String(program.trainingValidityMonths),
  dueSoon: String(program.dueSoonDays),
  retention: String(program.retentionYears),
  languages: program.tagLanguages,
  grounds: groundsOf(program.removalGrounds, groundsOfTrade),
  release: program.release ?? [],
  reinspection: program.reinspectionDays === undefined ? '' : String(program.reinspectionDays),
});

/** `undefined` where the text is no whole number within the bounds. */
export const wholeNumber = (text: string, least: number, most: number): number | undefined => {
  const value = /^\d{1,4}$/.test(text.trim()) ? Number(text) : undefined;
  return value !== undefined && value >= least && value <= most ? value : undefined;
};

/** Bounds of sense; what the trade allows the station says, with a sentence. */
export const bounds = {
  months: [1, 120],
  grace: [0, 60],
  dueSoon: [1, 366],
  retention: [0, 100],
  reinspection: [1, 60],
} as const satisfies Record<string, readonly [number, number]>;

export const monthsOf = (text: string): number | undefined => wholeNumber(text, ...bounds.months);

/** The settings that are to be signed, or `undefined` where a line is not as it should be. */
export const settingsFrom = (
  draft: ProgramDraft,
  from: Program,
  language: Language,
): Omit<Program, 'version'> | undefined => {
  const {
    version: _version,
    typesOfUse: _uses,
    trainingValidityMonths: _training,
    release: _release,
    reinspectionDays: _reinspection,
    ...kept
  } = from;
  const interval = monthsOf(draft.interval);
  const typesChosen = draft.isByUse ? chosenUses(draft) : undefined;
  const graceDays = wholeNumber(draft.grace, ...bounds.grace);
  const dueSoonDays = wholeNumber(draft.dueSoon, ...bounds.dueSoon);
  const retentionYears = wholeNumber(draft.retention, ...bounds.retention);
  const training = draft.training.trim() === '' ? undefined : monthsOf(draft.training);
  const isTraining = draft.training.trim() === '' || training !== undefined;
  const reinspectionDays = wholeNumber(draft.reinspection, ...bounds.reinspection);
  const isReinspection = draft.reinspection.trim() === '' || reinspectionDays !== undefined;
  const title = draft.title.trim();
  if (draft.isByUse && typesChosen === undefined) return undefined;
  if (interval === undefined || graceDays === undefined || !isTraining) return undefined;
  if (dueSoonDays === undefined || retentionYears === undefined || !isReinspection) return undefined;
  if (title === '' || draft.languages.length === 0) return undefined;
  return {
    ...kept,
    title: title === from.title[language] ? from.title : { en: title, es: title },
    inspectionInterval: { months: interval, source: sourceOf(draft, from, interval) },
    ...(typesChosen === undefined ? {} : { typesOfUse: typesChosen }),
    jurisdictions: [...draft.jurisdictions],
    employerRules: [...draft.employerRules],
    monthEnd: draft.monthEnd,
    missedInspection: { rule: draft.missed, graceDays },
    ...(training === undefined ? {} : { trainingValidityMonths: training }),
    dueSoonDays,
    retentionYears,
    tagLanguages: [...draft.languages],
    removalGrounds: [...draft.grounds],
    ...(draft.release.length === 0 ? {} : { release: [...draft.release] }),
    ...(reinspectionDays === undefined ? {} : { reinspectionDays }),
  };
};

/** The employer's document where one is named or the interval is the employer's own; else what the program named before. */
const sourceOf = (
  { document, title }: ProgramDraft,
  { inspectionInterval }: Program,
  months: number,
): Program['inspectionInterval']['source'] => {
  if (document.trim() !== '') return { mark: 'employer', citation: document.trim() };
  return months === inspectionInterval.months && inspectionInterval.source.mark !== 'employer'
    ? inspectionInterval.source
    : { mark: 'employer', citation: title.trim() };
};

/** `undefined` where a line is not as it should be. */
const chosenUses = ({ uses }: ProgramDraft): NonNullable<Program['typesOfUse']> | undefined => {
  const [light, moderate, severe] = typesOfUse.map((use) => {
    const inspectionMonths = monthsOf(uses[use].inspection);
    const revalidationMonths = monthsOf(uses[use].revalidation);
    return inspectionMonths === undefined || revalidationMonths === undefined
      ? undefined
      : { inspectionMonths, revalidationMonths };
  });
  return light === undefined || moderate === undefined || severe === undefined
    ? undefined
    : { 'infrequent to light': light, 'moderate to heavy': moderate, 'severe to continuous': severe };
};
