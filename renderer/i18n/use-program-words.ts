/** The words of a program: its intervals, sources and further rules, in the language of the window. */
import type { ModelSheet } from '../../src/domain/model-sheet.ts';
import type { Source } from '../../src/domain/procedure.ts';
import type { Program } from '../../src/domain/program.ts';
import { useText } from './text.ts';

type EmployerRule = Program['employerRules'][number];

export interface ProgramWords {
  every(months: number): string;
  months(count: number): string;
  /** What the standard asks for, in months. */
  range(least: number, most: number): string;
  source(source: Source): string;
  holdsFor(rule: EmployerRule, models: readonly ModelSheet[]): string;
  dating(program: Program): string;
  missed(program: Program): string;
  training(program: Program): string;
  retention(program: Program): string;
}

export const useProgramWords = (): ProgramWords => {
  const { t } = useText();
  const months = (count: number): string =>
    count % 12 === 0 && count > 12
      ? t('program:rules.years', { count: count / 12 })
      : t('program:rules.months', { count });
  return {
    months,
    every: (count) => t('program:rules.every', { months: months(count) }),
    range: (least, most) =>
      least === most
        ? t('program:rules.exactly', { most: months(most) })
        : t('program:rules.range', { least: String(least), most: months(most) }),
    source: ({ mark, citation }) => `${citation} (${t(`program:mark.${mark}`)})`,
    holdsFor: ({ typeOfUse, modelSheetId }, models) => {
      const sheet = models.find((each) => each.modelSheetId === modelSheetId);
      const model = sheet === undefined ? modelSheetId : `${sheet.manufacturer} ${sheet.model}`;
      const use = typeOfUse === undefined ? undefined : t(`program:use.${typeOfUse}`);
      const parts = [use, model].filter((part) => part !== undefined);
      return parts.length === 0 ? t('program:rules.everyDevice') : parts.join(' · ');
    },
    dating: ({ monthEnd }) => t(monthEnd ? 'program:other.monthEnd' : 'program:other.exact'),
    missed: ({ missedInspection: { rule, graceDays } }) => {
      if (rule === 'inspect') return t('program:other.inspect');
      return graceDays === 0
        ? t('program:other.revalidate')
        : t('program:other.revalidateAfter', { count: graceDays });
    },
    training: ({ trainingValidityMonths: longest }) =>
      longest === undefined
        ? t('program:other.certificate')
        : t('program:other.atMost', { months: months(longest) }),
    retention: ({ retentionYears }) =>
      retentionYears === 0 ? t('program:other.life') : t('program:other.years', { count: retentionYears }),
  };
};
