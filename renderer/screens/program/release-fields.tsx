/** What the employer asks for before a removed device comes back, besides what the trade asks for: taken out, or added. */
import { useState } from 'react';
import type { StrictRelease } from '../../../src/domain/held/release-rules.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { CheckBox } from '../../components/check-box.tsx';
import { SelectInput } from '../../components/select-input.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './program.module.css';
import { certain, kindsToAsk, needsOfRule, type ReleaseOfTrade, strictRelease } from './release-draft.ts';
import { useReleaseWords } from './use-release-words.ts';

export interface ReleaseFieldsProps {
  readonly release: readonly StrictRelease[];
  readonly ofTrade: ReleaseOfTrade;
  onChange(release: readonly StrictRelease[]): void;
}

const personsOffered = ['2', '3', '4', '5'] as const;

export const ReleaseFields = ({ release, ofTrade, onChange }: ReleaseFieldsProps) => {
  const { t } = useText();
  const words = useReleaseWords(ofTrade);
  const [rule, setRule] = useState(ofTrade.rules[0]?.key ?? '');
  const [besides, setBesides] = useState<readonly string[]>([]);
  const [persons, setPersons] = useState<(typeof personsOffered)[number]>('2');
  const [wasTried, setTried] = useState(false);
  const needs = needsOfRule(ofTrade, rule);
  const asked = certain(needs);
  const wanted = strictRelease(ofTrade, rule, besides, Number(persons));
  const isThere = release.some((each) => each.for === rule);
  const fault = isThere ? t('program:release.already') : t('program:release.more');
  const add = (): void => {
    setTried(true);
    if (wanted === undefined || isThere) return;
    onChange([...release, wanted]);
    setBesides([]);
    setPersons('2');
    setTried(false);
  };
  return (
    <section className={styles.group} aria-labelledby="release-rules">
      <h3 id="release-rules">{t('program:release.title')}</h3>
      <p className={styles.soft}>{t('program:release.hint')}</p>
      {release.map((each) => (
        <div key={each.for} className={styles.line}>
          <span>
            {words.ruleName(each.for)}: {words.asks(each)}
          </span>
          <Button
            onPress={() => onChange(release.filter((other) => other !== each))}
            label={`${t('program:edit.remove')}: ${words.ruleName(each.for)}`}
          >
            {t('program:edit.remove')}
          </Button>
        </div>
      ))}
      <div className={styles.pair}>
        <SelectInput
          label={t('program:release.rule')}
          value={rule}
          options={ofTrade.rules.map(({ key }) => ({ value: key, label: words.ruleName(key) }))}
          onChange={setRule}
        />
        <SelectInput<(typeof personsOffered)[number]>
          label={t('program:release.howMany')}
          value={persons}
          options={personsOffered.map((value) => ({ value, label: value }))}
          onChange={setPersons}
        />
      </div>
      <p>{t('program:release.asks', { needs: words.needs(needs) })}</p>
      <fieldset>
        <legend className={styles.legend}>{t('program:release.besides')}</legend>
        <div className={styles.boxes}>
          {kindsToAsk(ofTrade)
            .filter(({ key }) => !asked.includes(key))
            .map(({ key }) => (
              <CheckBox
                key={key}
                isSelected={besides.includes(key)}
                onChange={(isAsked) =>
                  setBesides(isAsked ? [...besides, key] : besides.filter((other) => other !== key))
                }
              >
                {words.kindName(key)}
              </CheckBox>
            ))}
        </div>
      </fieldset>
      <AlertLine sentence={wasTried && (wanted === undefined || isThere) ? fault : undefined} />
      <div>
        <Button icon="plus" onPress={add} label={`${t('program:edit.add')}: ${t('program:release.title')}`}>
          {t('program:edit.add')}
        </Button>
      </div>
    </section>
  );
};
