/** The employer's stricter rules for a type of use, a model, or both: taken out, or added with their reason. */
import { useState } from 'react';
import { type TypeOfUse, typesOfUse } from '../../../src/domain/due/type-of-use.ts';
import type { Program } from '../../../src/domain/program.ts';
import { Button } from '../../components/button.tsx';
import { SelectInput } from '../../components/select-input.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useProgramWords } from '../../i18n/use-program-words.ts';
import { useStationQuery } from '../../station/hooks.ts';
import styles from './program.module.css';
import { monthsOf } from './program-draft.ts';

type Rule = Program['employerRules'][number];

export interface EmployerRulesFieldsProps {
  readonly rules: readonly Rule[];
  onChange(rules: readonly Rule[]): void;
}

const empty = { inspection: '', revalidation: '', why: '' };

export const EmployerRulesFields = ({ rules, onChange }: EmployerRulesFieldsProps) => {
  const { t } = useText();
  const words = useProgramWords();
  const models = useStationQuery('model-sheet.list', {}).data?.modelSheets ?? [];
  const [draft, setDraft] = useState(empty);
  const [use, setUse] = useState<TypeOfUse | ''>('');
  const [model, setModel] = useState('');
  const [wasTried, setTried] = useState(false);
  const inspection = monthsOf(draft.inspection);
  const revalidation = monthsOf(draft.revalidation);
  const isFit = (text: string): boolean => text.trim() === '' || monthsOf(text) !== undefined;
  const hasInterval = inspection !== undefined || revalidation !== undefined;
  const why = draft.why.trim();
  const add = (): void => {
    setTried(true);
    if (why === '' || !hasInterval || !isFit(draft.inspection) || !isFit(draft.revalidation)) return;
    onChange([
      ...rules,
      {
        why,
        ...(use === '' ? {} : { typeOfUse: use }),
        ...(model === '' ? {} : { modelSheetId: model }),
        ...(inspection === undefined ? {} : { inspectionMonths: inspection }),
        ...(revalidation === undefined ? {} : { revalidationMonths: revalidation }),
      },
    ]);
    setDraft(empty);
    setTried(false);
  };
  const error = (text: string): string | undefined =>
    wasTried && (!isFit(text) || !hasInterval) ? t('program:edit.notWhole') : undefined;
  return (
    <section className={styles.group} aria-labelledby="employer-rules">
      <h3 id="employer-rules">{t('program:edit.own')}</h3>
      {rules.map((rule) => (
        <div key={JSON.stringify(rule)} className={styles.line}>
          <span>
            {[
              `${words.holdsFor(rule, models)}:`,
              rule.inspectionMonths === undefined
                ? ''
                : `${t('program:rules.inspection')} ${words.every(rule.inspectionMonths)}`,
              rule.revalidationMonths === undefined
                ? ''
                : `${t('program:rules.revalidation')} ${words.every(rule.revalidationMonths)}`,
              `(${rule.why})`,
            ]
              .filter((part) => part !== '')
              .join(' ')}
          </span>
          <Button
            onPress={() => onChange(rules.filter((other) => other !== rule))}
            label={`${t('program:edit.remove')}: ${rule.why}`}
          >
            {t('program:edit.remove')}
          </Button>
        </div>
      ))}
      <div className={styles.adding}>
        <SelectInput<TypeOfUse | ''>
          label={t('program:edit.type')}
          value={use}
          options={[
            { value: '', label: t('program:edit.anyUse') },
            ...typesOfUse.map((value) => ({ value, label: t(`program:use.${value}`) })),
          ]}
          onChange={setUse}
        />
        <SelectInput
          label={t('program:edit.model')}
          value={model}
          options={[
            { value: '', label: t('program:edit.anyModel') },
            ...models.map((sheet) => ({
              value: sheet.modelSheetId,
              label: `${sheet.manufacturer} ${sheet.model}`,
            })),
          ]}
          onChange={setModel}
        />
        <TextInput
          label={t('program:edit.inspectionMonths')}
          value={draft.inspection}
          onChange={(text) => setDraft({ ...draft, inspection: text })}
          error={error(draft.inspection)}
          inputMode="numeric"
        />
        <TextInput
          label={t('program:edit.revalidationMonths')}
          value={draft.revalidation}
          onChange={(text) => setDraft({ ...draft, revalidation: text })}
          error={isFit(draft.revalidation) ? undefined : error(draft.revalidation)}
          inputMode="numeric"
        />
        <TextInput
          label={t('program:edit.why')}
          value={draft.why}
          onChange={(text) => setDraft({ ...draft, why: text })}
          error={wasTried && why === '' ? t('screens:form.needed') : undefined}
        />
        <Button icon="plus" onPress={add} label={`${t('program:edit.add')}: ${t('program:edit.own')}`}>
          {t('program:edit.add')}
        </Button>
      </div>
    </section>
  );
};
