/** The published rules that the product ships as programs, to look at and to begin with. */
import { useState } from 'react';
import type { Program } from '../../../src/domain/program.ts';
import type { OutputOf } from '../../../src/station/contract.ts';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { useProgramWords } from '../../i18n/use-program-words.ts';
import styles from './program.module.css';
import { ProgramDialog } from './program-dialog.tsx';

export interface ProgramPresetsProps extends Pick<OutputOf<'program.show'>, 'presets' | 'standard'> {
  /** Absent where the person may not change the program. */
  readonly onBegin: ((preset: Program) => void) | undefined;
}

export const ProgramPresets = ({ presets, standard, onBegin }: ProgramPresetsProps) => {
  const { t, inLanguage } = useText();
  const words = useProgramWords();
  const [shown, setShown] = useState<Program>();
  return (
    <section className={styles.box} aria-labelledby="program-presets">
      <h2 id="program-presets">{t('program:presets.title')}</h2>
      <p className={styles.soft}>{t('program:presets.hint')}</p>
      <ul className={styles.list}>
        {presets.map((preset) => {
          const title = inLanguage(preset.title);
          return (
            <li key={preset.key} className={styles.preset}>
              <div className={styles.words}>
                <span className={styles.name}>{title}</span>
                {sourcesOf(preset, standard).map((source) => (
                  <span key={source.citation} className={styles.soft}>
                    {words.source(source)}
                  </span>
                ))}
              </div>
              <div className={styles.buttons}>
                <Button onPress={() => setShown(preset)} label={`${t('program:earlier.show')}: ${title}`}>
                  {t('program:earlier.show')}
                </Button>
                {onBegin === undefined ? null : (
                  <Button onPress={() => onBegin(preset)} label={`${t('program:presets.begin')}: ${title}`}>
                    {t('program:presets.begin')}
                  </Button>
                )}
              </div>
            </li>
          );
        })}
      </ul>
      {shown === undefined ? null : (
        <ProgramDialog program={shown} standard={standard} onClose={() => setShown(undefined)} />
      )}
    </section>
  );
};

const sourcesOf = (
  { inspectionInterval, typesOfUse, jurisdictions }: Program,
  standard: OutputOf<'program.show'>['standard'],
) => [
  inspectionInterval.source,
  ...(typesOfUse === undefined ? [] : [standard.source]),
  ...jurisdictions.map(({ source }) => source),
];
