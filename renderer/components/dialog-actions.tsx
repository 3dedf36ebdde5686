/** The end of a form in a dialog: save, or leave it. */
import { useText } from '../i18n/text.ts';
import { Button } from './button.tsx';
import styles from './dialog-actions.module.css';

export const DialogActions = ({ isRunning, onCancel }: { readonly isRunning: boolean; onCancel(): void }) => {
  const { t } = useText();
  return (
    <div className={styles.actions}>
      <Button onPress={onCancel}>{t('screens:form.cancel')}</Button>
      <Button type="submit" look="primary" isRunning={isRunning}>
        {t(isRunning ? 'screens:form.saving' : 'screens:form.save')}
      </Button>
    </div>
  );
};
