/** A program as a table: whose rule gives which interval, for what, and where the rule comes from. */
import type { ReactNode } from 'react';
import { inspectionChoice, revalidationChoice } from '../../../src/domain/due/due-rules.ts';
import type { Program } from '../../../src/domain/program.ts';
import type { OutputOf } from '../../../src/station/contract.ts';
import { useText } from '../../i18n/text.ts';
import { useProgramWords } from '../../i18n/use-program-words.ts';
import { useStationQuery } from '../../station/hooks.ts';
import styles from './program.module.css';

export interface ProgramRulesProps {
  readonly program: Program;
  readonly standard: OutputOf<'program.show'>['standard'];
}

interface Rule {
  readonly key: string;
  readonly holdsFor: ReactNode;
  readonly inspection: ReactNode;
  readonly revalidation: ReactNode;
  readonly source: ReactNode;
}

export const ProgramRules = ({ program, standard }: ProgramRulesProps) => {
  const { t, inLanguage } = useText();
  const words = useProgramWords();
  const models = useStationQuery('model-sheet.list', {}).data?.modelSheets ?? [];
  const every = (months: number | undefined): string =>
    months === undefined ? t('program:rules.none') : words.every(months);
  const rules: readonly Rule[] = [
    {
      key: 'every',
      holdsFor: t('program:rules.everyDevice'),
      inspection: every(program.inspectionInterval.months),
      revalidation: t('program:rules.none'),
      source: words.source(program.inspectionInterval.source),
    },
    ...standard.intervals.map(
      ({ typeOfUse, inspectionLeastMonths: least, inspectionMostMonths: most, revalidationMonths }) => ({
        key: typeOfUse,
        holdsFor: <Two first={t(`program:use.${typeOfUse}`)} second={t(`program:typical.${typeOfUse}`)} />,
        inspection: (
          <Two first={every(inspectionChoice(typeOfUse, program))} second={words.range(least, most)} />
        ),
        revalidation: (
          <Two
            first={every(revalidationChoice(typeOfUse, program))}
            second={words.range(revalidationMonths, revalidationMonths)}
          />
        ),
        source: words.source(standard.source),
      }),
    ),
    ...program.jurisdictions.map(({ name, inspectionMonths, source }) => ({
      key: `jurisdiction ${name.en}`,
      holdsFor: inLanguage(name),
      inspection: every(inspectionMonths),
      revalidation: t('program:rules.none'),
      source: words.source(source),
    })),
    ...program.employerRules.map((rule, index) => ({
      key: `employer ${index} ${rule.why}`,
      holdsFor: words.holdsFor(rule, models),
      inspection: every(rule.inspectionMonths),
      revalidation: every(rule.revalidationMonths),
      source: words.source({ mark: 'employer', citation: rule.why }),
    })),
    {
      key: 'manufacturer',
      holdsFor: t('program:rules.manufacturer'),
      inspection: t('program:rules.bySheet'),
      revalidation: t('program:rules.bySheet'),
      source: t('program:rules.manual'),
    },
  ];
  return (
    <>
      <table className={styles.rules}>
        <thead>
          <tr>
            <th scope="col">{t('program:rules.for')}</th>
            <th scope="col">{t('program:rules.inspection')}</th>
            <th scope="col">{t('program:rules.revalidation')}</th>
            <th scope="col">{t('program:rules.source')}</th>
          </tr>
        </thead>
        <tbody>
          {rules.map(({ key, holdsFor, inspection, revalidation, source }) => (
            <tr key={key}>
              <th scope="row">{holdsFor}</th>
              <td>{inspection}</td>
              <td>{revalidation}</td>
              <td className={styles.source}>{source}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className={styles.soft}>
        {t(program.typesOfUse === undefined ? 'program:rules.strictest' : 'program:rules.notDetermined')}
      </p>
    </>
  );
};

const Two = ({ first, second }: { readonly first: string; readonly second: string }) => (
  <span className={styles.two}>
    <span>{first}</span>
    <span className={styles.soft}>{second}</span>
  </span>
);
