/** One group of devices that a notice means: models, serial numbers and dates of manufacture, all of which must hold. */
import { Button } from '../../components/button.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { LinesInput } from './lines-input.tsx';
import type { GroupDraft } from './notice-draft.ts';
import styles from './notices.module.css';

export interface GroupFieldsProps {
  readonly number: number;
  readonly group: GroupDraft;
  readonly madeFault: string | undefined;
  onChange(group: GroupDraft): void;
  /** Absent where it is the only one. */
  readonly onRemove?: (() => void) | undefined;
}

export const GroupFields = ({ number, group, madeFault, onChange, onRemove }: GroupFieldsProps) => {
  const { t } = useText();
  const set = (change: Partial<GroupDraft>): void => onChange({ ...group, ...change });
  return (
    <fieldset className={styles.group}>
      <legend>{t('notices:form.group', { number })}</legend>
      <div className={styles.pair}>
        <LinesInput
          label={t('notices:form.models')}
          hint={t('notices:form.modelsHint')}
          value={group.models}
          onChange={(models) => set({ models })}
        />
        <LinesInput
          label={t('notices:form.serials')}
          hint={t('notices:form.serialsHint')}
          value={group.serials}
          onChange={(serials) => set({ serials })}
        />
      </div>
      <div className={styles.pair}>
        <TextInput
          label={t('notices:form.madeFrom')}
          hint={t('notices:form.madeHint')}
          error={madeFault}
          value={group.madeFrom}
          onChange={(madeFrom) => set({ madeFrom })}
        />
        <TextInput
          label={t('notices:form.madeUntil')}
          value={group.madeUntil}
          onChange={(madeUntil) => set({ madeUntil })}
        />
      </div>
      {onRemove === undefined ? null : (
        <div className={styles.actions}>
          <Button onPress={onRemove}>{t('notices:form.removeGroup', { number })}</Button>
        </div>
      )}
    </fieldset>
  );
};
