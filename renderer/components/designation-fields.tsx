/** The written designation of a competent person: by whom, when, and how long the training is valid. */
import { useText } from '../i18n/text.ts';
import { DateInput } from './date-input.tsx';
import styles from './designation-fields.module.css';
import { TextInput } from './text-input.tsx';

/** As typed; dates in ISO 8601, or empty. */
export interface DesignationDraft {
  readonly designatedBy: string;
  readonly designatedOn: string;
  readonly trainingValidUntil: string;
}

export const emptyDesignation: DesignationDraft = {
  designatedBy: '',
  designatedOn: '',
  trainingValidUntil: '',
};

export interface DesignationFieldsProps {
  readonly value: DesignationDraft;
  onChange(value: DesignationDraft): void;
  readonly errors: { readonly [Field in keyof DesignationDraft]: string | undefined };
}

export const DesignationFields = ({ value, onChange, errors }: DesignationFieldsProps) => {
  const { t } = useText();
  return (
    <div className={styles.fields}>
      <TextInput
        label={t('screens:setup.designatedBy')}
        value={value.designatedBy}
        onChange={(designatedBy) => onChange({ ...value, designatedBy })}
        error={errors.designatedBy}
      />
      <DateInput
        label={t('screens:setup.designatedOn')}
        value={value.designatedOn}
        onChange={(designatedOn) => onChange({ ...value, designatedOn })}
        error={errors.designatedOn}
      />
      <DateInput
        label={t('screens:setup.trainingUntil')}
        value={value.trainingValidUntil}
        onChange={(trainingValidUntil) => onChange({ ...value, trainingValidUntil })}
        error={errors.trainingValidUntil}
      />
    </div>
  );
};
