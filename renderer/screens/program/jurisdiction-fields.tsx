/** The rules of jurisdictions in a program: taken out, or added with the law that says so. */
import { useState } from 'react';
import type { Program } from '../../../src/domain/program.ts';
import { Button } from '../../components/button.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useProgramWords } from '../../i18n/use-program-words.ts';
import styles from './program.module.css';
import { monthsOf } from './program-draft.ts';

export interface JurisdictionFieldsProps {
  readonly jurisdictions: Program['jurisdictions'];
  onChange(jurisdictions: Program['jurisdictions']): void;
}

const empty = { name: '', months: '', citation: '' };

export const JurisdictionFields = ({ jurisdictions, onChange }: JurisdictionFieldsProps) => {
  const { t, inLanguage } = useText();
  const words = useProgramWords();
  const [draft, setDraft] = useState(empty);
  const [wasTried, setTried] = useState(false);
  const inspectionMonths = monthsOf(draft.months);
  const add = (): void => {
    setTried(true);
    const name = draft.name.trim();
    const citation = draft.citation.trim();
    if (name === '' || citation === '' || inspectionMonths === undefined) return;
    onChange([
      ...jurisdictions,
      { name: { en: name, es: name }, inspectionMonths, source: { mark: 'published', citation } },
    ]);
    setDraft(empty);
    setTried(false);
  };
  const needed = (text: string): string | undefined =>
    wasTried && text.trim() === '' ? t('screens:form.needed') : undefined;
  return (
    <section className={styles.group} aria-labelledby="jurisdictions">
      <h3 id="jurisdictions">{t('program:edit.jurisdictions')}</h3>
      {jurisdictions.map((each) => {
        const name = inLanguage(each.name);
        return (
          <div key={name} className={styles.line}>
            <span>{`${name}: ${words.every(each.inspectionMonths)}`}</span>
            <Button
              onPress={() => onChange(jurisdictions.filter((other) => other !== each))}
              label={`${t('program:edit.remove')}: ${name}`}
            >
              {t('program:edit.remove')}
            </Button>
          </div>
        );
      })}
      <div className={styles.adding}>
        <TextInput
          label={t('program:edit.where')}
          value={draft.name}
          onChange={(name) => setDraft({ ...draft, name })}
          error={needed(draft.name)}
        />
        <TextInput
          label={t('program:edit.inspectionMonths')}
          value={draft.months}
          onChange={(months) => setDraft({ ...draft, months })}
          error={wasTried && inspectionMonths === undefined ? t('program:edit.notWhole') : undefined}
          inputMode="numeric"
        />
        <TextInput
          label={t('program:edit.citation')}
          value={draft.citation}
          onChange={(citation) => setDraft({ ...draft, citation })}
          error={needed(draft.citation)}
        />
        <Button
          icon="plus"
          onPress={add}
          label={`${t('program:edit.add')}: ${t('program:edit.jurisdictions')}`}
        >
          {t('program:edit.add')}
        </Button>
      </div>
    </section>
  );
};
