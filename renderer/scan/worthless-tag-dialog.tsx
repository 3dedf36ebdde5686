/** Says, large, that the scanned tag is worth nothing here: altered, or of another station. */
import { Dialog } from '../components/dialog.tsx';
import { NumberedChoices } from '../components/numbered-choices.tsx';
import { useText } from '../i18n/text.ts';
import styles from './dialogs.module.css';

export interface WorthlessTagDialogProps {
  readonly state: 'altered' | 'not ours';
  onClose(): void;
}

export const WorthlessTagDialog = ({ state, onClose }: WorthlessTagDialogProps) => {
  const { t } = useText();
  return (
    <Dialog title={t(`screens:scan.worthlessTag.title.${state}`)} onClose={onClose} isLoud>
      <p className={styles.large}>{t(`screens:scan.worthlessTag.${state}`)}</p>
      <NumberedChoices
        choices={[
          { key: 'close', label: t('screens:scan.oldTag.close'), isPrimary: true, onChoose: onClose },
        ]}
      />
    </Dialog>
  );
};
