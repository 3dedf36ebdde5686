/** Which types of device a designation covers: every one, or the model sheets that are chosen. */
import { CheckBox } from '../../components/check-box.tsx';
import { Choice } from '../../components/choice.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationQuery } from '../../station/hooks.ts';
import styles from './people.module.css';

export interface ScopeBoxesProps {
  /** Model sheets; absent for every type of device. */
  readonly scope: readonly string[] | undefined;
  onChange(scope: readonly string[] | undefined): void;
}

export const ScopeBoxes = ({ scope, onChange }: ScopeBoxesProps) => {
  const { t, lengthText } = useText();
  const { data } = useStationQuery('model-sheet.list', {});
  return (
    <div>
      <Choice
        label={t('people:form.scope')}
        value={scope === undefined ? 'every' : 'some'}
        options={[
          { value: 'every', label: t('people:form.every') },
          { value: 'some', label: t('people:form.some') },
        ]}
        onChange={(chosen) => onChange(chosen === 'every' ? undefined : (scope ?? []))}
      />
      {scope === undefined ? null : (
        <div className={styles.boxes}>
          {(data?.modelSheets ?? []).map(({ modelSheetId: id, manufacturer, model, ratedLengthM }) => (
            <CheckBox
              key={id}
              isSelected={scope.includes(id)}
              onChange={(isIn) => onChange(isIn ? [...scope, id] : scope.filter((other) => other !== id))}
            >
              {`${manufacturer} ${model}, ${lengthText(ratedLengthM)}`}
            </CheckBox>
          ))}
        </div>
      )}
    </div>
  );
};
