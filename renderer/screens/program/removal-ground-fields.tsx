/** The grounds for taking a device out of service at once: the trade's to read, the employer's own taken out or added. */
import { useState } from 'react';
import type { RemovalGround } from '../../../src/domain/program.ts';
import { Button } from '../../components/button.tsx';
import { CheckBox } from '../../components/check-box.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { isOfTrade, ownGround } from './ground-draft.ts';
import styles from './program.module.css';

export interface RemovalGroundFieldsProps {
  readonly grounds: readonly RemovalGround[];
  /** Those that no program goes without. */
  readonly ofTrade: readonly RemovalGround[];
  onChange(grounds: readonly RemovalGround[]): void;
}

export const RemovalGroundFields = ({ grounds, ofTrade, onChange }: RemovalGroundFieldsProps) => {
  const { t, inLanguage } = useText();
  const [words, setWords] = useState('');
  const [noteNeeded, setNoteNeeded] = useState(false);
  const [wasTried, setTried] = useState(false);
  const own = grounds.filter(({ key }) => !isOfTrade(key, ofTrade));
  const add = (): void => {
    setTried(true);
    if (words.trim() === '') return;
    onChange([...grounds, ownGround(words, noteNeeded, grounds)]);
    setWords('');
    setNoteNeeded(false);
    setTried(false);
  };
  return (
    <section className={styles.group} aria-labelledby="removal-grounds">
      <h3 id="removal-grounds">{t('program:edit.grounds')}</h3>
      <p className={styles.soft}>
        {t('program:edit.groundsOfTrade', {
          grounds: ofTrade.map(({ label }) => inLanguage(label)).join('; '),
        })}
      </p>
      {own.map((ground) => (
        <div key={ground.key} className={styles.line}>
          <span>
            {inLanguage(ground.label)}
            {ground.noteNeeded ? ` (${t('program:edit.groundNote')})` : ''}
          </span>
          <Button
            onPress={() => onChange(grounds.filter((other) => other !== ground))}
            label={`${t('program:edit.remove')}: ${inLanguage(ground.label)}`}
          >
            {t('program:edit.remove')}
          </Button>
        </div>
      ))}
      <div className={styles.adding}>
        <TextInput
          label={t('program:edit.ground')}
          value={words}
          onChange={setWords}
          error={wasTried && words.trim() === '' ? t('screens:form.needed') : undefined}
        />
        <CheckBox isSelected={noteNeeded} onChange={setNoteNeeded}>
          {t('program:edit.groundNote')}
        </CheckBox>
        <Button icon="plus" onPress={add} label={`${t('program:edit.add')}: ${t('program:edit.grounds')}`}>
          {t('program:edit.add')}
        </Button>
      </div>
    </section>
  );
};
