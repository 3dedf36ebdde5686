/** What is left of our own label and tag, and what people know. */
import type { FormEvent } from 'react';
import { useState } from 'react';
import type { PersonView } from '../../../src/station/person-view.ts';
import { Button } from '../../components/button.tsx';
import { Choice } from '../../components/choice.tsx';
import { SelectInput } from '../../components/select-input.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { type FactDraft, type FactField, faultOf, otherFields } from './fact-draft.ts';
import styles from './who.module.css';

export interface OtherFactsProps {
  readonly draft: FactDraft;
  readonly people: readonly PersonView[];
  onChange(field: FactField, value: string): void;
  onDone(): void;
}

export const OtherFacts = ({ draft, people, onChange, onDone }: OtherFactsProps) => {
  const { t, lengthUnit } = useText();
  const [wasTried, setTried] = useState(false);
  const errorOf = (field: FactField): string | undefined => {
    const fault = wasTried ? faultOf(draft, field, lengthUnit) : undefined;
    return fault === undefined ? undefined : t(`screens:identity.${fault}`);
  };
  const done = (): void => {
    setTried(true);
    if (otherFields.every((field) => faultOf(draft, field, lengthUnit) === undefined)) onDone();
  };
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command' || !['confirm', 'next', 'back'].includes(meaning.command)) return false;
    done();
    return true;
  });
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    done();
  };
  return (
    <form className={styles.screen} onSubmit={submit}>
      <h1>{t('screens:identity.other')}</h1>
      <div className={styles.pair}>
        <TextInput
          label={t('screens:identity.field.benchId')}
          hint={t('screens:identity.fragmentHint')}
          value={draft.benchId}
          onChange={(value) => onChange('benchId', value)}
          error={errorOf('benchId')}
          autoFocus
        />
        <TextInput
          label={t('screens:identity.field.tagNumber')}
          value={draft.tagNumber}
          onChange={(value) => onChange('tagNumber', value)}
          error={errorOf('tagNumber')}
          inputMode="numeric"
        />
        <SelectInput
          label={t('screens:identity.field.lastUserId')}
          value={draft.lastUserId}
          options={[
            { value: '', label: t('screens:identity.nobody') },
            ...people.map(({ personId, name }) => ({ value: personId, label: name })),
          ]}
          onChange={(value) => onChange('lastUserId', value)}
        />
      </div>
      <Choice<'held place' | 'elsewhere' | 'unknown'>
        label={t('screens:identity.field.found')}
        value={draft.found === '' ? 'unknown' : draft.found}
        options={[
          { value: 'held place', label: t('screens:identity.found.held place') },
          { value: 'elsewhere', label: t('screens:identity.found.elsewhere') },
          { value: 'unknown', label: t('screens:identity.nobody') },
        ]}
        onChange={(value) => onChange('found', value === 'unknown' ? '' : value)}
      />
      <div className={styles.actions}>
        <Button type="submit" look="primary" icon="forward">
          {t('screens:identity.keep')}
        </Button>
      </div>
    </form>
  );
};
