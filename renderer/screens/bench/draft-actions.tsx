/** Confirm and cancel of an answer that is given in detail. */
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './draft-actions.module.css';
import { KeyCap } from './key-cap.tsx';
import { letterOf } from './shortcut.ts';

export interface DraftActionsProps {
  readonly confirm: string;
  readonly isDisabled: boolean;
  onConfirm(): void;
  onCancel(): void;
}

export const DraftActions = ({ confirm, isDisabled, onConfirm, onCancel }: DraftActionsProps) => {
  const { t } = useText();
  return (
    <div className={styles.actions}>
      <Button onPress={onCancel}>
        <span className={styles.words}>
          {t('walk:picker.cancel')} <KeyCap>{letterOf.cancel}</KeyCap>
        </span>
      </Button>
      <div className={styles.confirm}>
        <Button look="primary" size="large" isWide isDisabled={isDisabled} onPress={onConfirm}>
          <span className={styles.words}>
            {confirm} <KeyCap>{letterOf.confirm}</KeyCap>
          </span>
        </Button>
      </div>
    </div>
  );
};
