/** What a program says besides intervals: dating, missed inspections, training, tags, records. */
import type { Program } from '../../../src/domain/program.ts';
import { useText } from '../../i18n/text.ts';
import { useProgramWords } from '../../i18n/use-program-words.ts';
import styles from './program.module.css';

export const OtherRules = ({ program }: { readonly program: Program }) => {
  const { t, inLanguage } = useText();
  const words = useProgramWords();
  const facts: readonly (readonly [string, string])[] = [
    [t('program:other.dating'), words.dating(program)],
    [t('program:other.missed'), words.missed(program)],
    [t('program:other.training'), words.training(program)],
    [
      t('program:other.languages'),
      program.tagLanguages.map((language) => t(`program:language.${language}`)).join(' + '),
    ],
    [t('program:other.dueSoon'), t('program:other.days', { count: program.dueSoonDays })],
    [t('program:other.retention'), words.retention(program)],
    [
      t('program:other.reinspection'),
      program.reinspectionDays === undefined
        ? t('program:other.usual')
        : t('program:other.within', { count: program.reinspectionDays }),
    ],
    [t('program:other.place'), inLanguage(program.quarantinePlace)],
    [t('program:other.grounds'), program.removalGrounds.map(({ label }) => inLanguage(label)).join('; ')],
  ];
  return (
    <dl className={styles.facts}>
      {facts.map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
};
