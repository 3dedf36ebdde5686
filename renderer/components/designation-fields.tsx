/** The written designation of a competent person: by whom, when, in which document, and the training behind it. */
import { useText } from '../i18n/text.ts';
import { DateInput } from './date-input.tsx';
import type { DesignationDraft } from './designation-draft.ts';
import styles from './designation-fields.module.css';
import { TextInput } from './text-input.tsx';

export interface DesignationFieldsProps {
  readonly value: DesignationDraft;
  onChange(value: DesignationDraft): void;
  readonly errors: { readonly [Field in keyof DesignationDraft]?: string | undefined };
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
      <TextInput
        label={t('people:form.document')}
        value={value.document}
        onChange={(document) => onChange({ ...value, document })}
        error={errors.document}
      />
      <DateInput
        label={t('people:form.trainedOn')}
        value={value.trainedOn}
        onChange={(trainedOn) => onChange({ ...value, trainedOn })}
        error={errors.trainedOn}
      />
      <TextInput
        label={t('people:form.course')}
        value={value.trainingCourse}
        onChange={(trainingCourse) => onChange({ ...value, trainingCourse })}
        error={errors.trainingCourse}
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
