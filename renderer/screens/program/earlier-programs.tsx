/** The programs that were adopted before, newest first, each whole. */
import { useState } from 'react';
import type { OutputOf } from '../../../src/station/contract.ts';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationQuery } from '../../station/hooks.ts';
import styles from './program.module.css';
import { ProgramDialog } from './program-dialog.tsx';

type Shown = OutputOf<'program.show'>;

export const EarlierPrograms = ({ earlier, standard }: Pick<Shown, 'earlier' | 'standard'>) => {
  const { t, dateText, inLanguage } = useText();
  const [seq, setSeq] = useState<number>();
  return (
    <section className={styles.box} aria-labelledby="earlier-programs">
      <h2 id="earlier-programs">{t('program:earlier.title')}</h2>
      {earlier.length === 0 ? <p>{t('program:earlier.none')}</p> : null}
      <ul className={styles.list}>
        {earlier.map((each) => {
          const version = t('program:inForce.version', { key: each.key, version: each.version });
          return (
            <li key={each.seq} className={styles.item}>
              <div className={styles.words}>
                <span className={styles.name}>{inLanguage(each.title)}</span>
                <span>{version}</span>
                <span className={styles.soft}>
                  {t('program:inForce.signed', {
                    by: each.byName,
                    date: dateText(each.on),
                    from: dateText(each.effectiveFrom),
                  })}
                </span>
              </div>
              <Button onPress={() => setSeq(each.seq)} label={`${t('program:earlier.show')}: ${version}`}>
                {t('program:earlier.show')}
              </Button>
            </li>
          );
        })}
      </ul>
      {seq === undefined ? null : (
        <EarlierProgram seq={seq} standard={standard} onClose={() => setSeq(undefined)} />
      )}
    </section>
  );
};

interface EarlierProgramProps extends Pick<Shown, 'standard'> {
  readonly seq: number;
  onClose(): void;
}

const EarlierProgram = ({ seq, standard, onClose }: EarlierProgramProps) => {
  const { data } = useStationQuery('program.version', { seq });
  return data === undefined ? null : (
    <ProgramDialog program={data.program} standard={standard} onClose={onClose} />
  );
};
