/** Devices that a damaged text may have meant: nothing happens before a person says what stands on the device. */
import { formatBenchId } from '../../src/domain/bench-id/bench-id.ts';
import { Dialog } from '../components/dialog.tsx';
import { NumberedChoices } from '../components/numbered-choices.tsx';
import { useText } from '../i18n/text.ts';
import { navigate } from '../navigation/route.ts';
import styles from './dialogs.module.css';
import type { ScanMeaning } from './scan.ts';

type Suggestion = Extract<ScanMeaning, { meaning: 'suggestion' }>;

export interface SuggestionDialogProps {
  readonly text: string;
  readonly devices: Suggestion['devices'];
  onClose(): void;
}

export const SuggestionDialog = ({ text, devices, onClose }: SuggestionDialogProps) => {
  const { t, lengthText } = useText();
  const choices = devices.slice(0, 8).map(({ device, because }) => ({
    key: `${device.benchId} ${because}`,
    label: (
      <>
        <span className={styles.benchId}>{formatBenchId(device.benchId)}</span>
        <span className={styles.detail}>
          {device.manufacturer} {device.model}, {device.serial}, {lengthText(device.ratedLengthM)} (
          {t(
            because === 'serial number'
              ? 'screens:scan.suggestion.serial'
              : 'screens:scan.suggestion.repaired',
          )}
          )
        </span>
      </>
    ),
    onChoose: () => {
      onClose();
      navigate({ screen: 'device', benchId: device.benchId });
    },
  }));
  return (
    <Dialog title={t('screens:scan.suggestion.title')} onClose={onClose}>
      <p>{t('screens:scan.suggestion.text', { text })}</p>
      <NumberedChoices
        choices={[...choices, { key: 'cancel', label: t('screens:scan.suggestion.none'), onChoose: onClose }]}
      />
    </Dialog>
  );
};
