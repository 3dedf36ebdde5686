/** Says, large, why a scanned code cannot be read, and what to do. The next scan takes it away. */
import { Dialog } from '../components/dialog.tsx';
import { NumberedChoices } from '../components/numbered-choices.tsx';
import { useText } from '../i18n/text.ts';
import styles from './dialogs.module.css';
import { useScanHandler } from './scan.ts';

export interface MalformedDialogProps {
  readonly sentence: string;
  onClose(): void;
}

export const MalformedDialog = ({ sentence, onClose }: MalformedDialogProps) => {
  const { t } = useText();
  useScanHandler(() => {
    onClose();
    return false;
  }, 'witness');
  return (
    <Dialog title={t('screens:scan.malformed.title')} onClose={onClose}>
      <p className={styles.large}>{sentence}</p>
      <NumberedChoices
        choices={[
          { key: 'close', label: t('screens:scan.malformed.close'), isPrimary: true, onChoose: onClose },
        ]}
      />
    </Dialog>
  );
};
