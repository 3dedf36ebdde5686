/** The end of a form in a dialog: save, or leave it. The command symbol *confirm* saves. */
import { useRef } from 'react';
import { useText } from '../i18n/text.ts';
import { useScanHandler } from '../scan/scan.ts';
import { Button, type ButtonProps } from './button.tsx';
import styles from './dialog-actions.module.css';

export interface DialogActionsProps {
  readonly isRunning: boolean;
  onCancel(): void;
  /** What saving is here, where it is more than that. */
  readonly save?: Pick<ButtonProps, 'look' | 'icon' | 'isDisabled'> & { readonly label: string };
}

export const DialogActions = ({ isRunning, onCancel, save }: DialogActionsProps) => {
  const { t } = useText();
  const actions = useRef<HTMLDivElement>(null);
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command' || meaning.command !== 'confirm') return false;
    if (!isRunning && save?.isDisabled !== true) actions.current?.closest('form')?.requestSubmit();
    return true;
  });
  const { label, ...look } = save ?? { label: t(isRunning ? 'screens:form.saving' : 'screens:form.save') };
  return (
    <div ref={actions} className={styles.actions}>
      <Button onPress={onCancel}>{t('screens:form.cancel')}</Button>
      <Button type="submit" look="primary" {...look} isRunning={isRunning}>
        {label}
      </Button>
    </div>
  );
};
