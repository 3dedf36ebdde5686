/** Devices that a damaged text may have meant: nothing happens before a person says what stands on the device. */
import { formatBenchId } from '../../src/domain/bench-id/bench-id.ts';
import { Dialog } from '../components/dialog.tsx';
import { NumberedChoices } from '../components/numbered-choices.tsx';
import { useText } from '../i18n/text.ts';
import { navigate } from '../navigation/route.ts';
import { shortCode } from './bindable.ts';
import styles from './dialogs.module.css';
import { MarkingDataLines } from './marking-data-lines.tsx';
import type { ScanMeaning } from './scan.ts';

type Suggestion = Extract<ScanMeaning, { meaning: 'suggestion' }>;

export interface SuggestionDialogProps {
  readonly suggestion: Suggestion;
  onClose(): void;
}

export const SuggestionDialog = ({ suggestion, onClose }: SuggestionDialogProps) => {
  const { t, lengthText } = useText();
  const { text, devices, data } = suggestion;
  const choices = devices.slice(0, 7).map(({ device, because }) => ({
    key: `${device.benchId} ${because}`,
    label: (
      <>
        <span className={styles.benchId}>{formatBenchId(device.benchId)}</span>
        <span className={styles.detail}>
          {device.manufacturer} {device.model}, {device.serial}, {lengthText(device.ratedLengthM)} (
          {t(`screens:scan.suggestion.because.${because}`)})
        </span>
      </>
    ),
    onChoose: () => {
      onClose();
      navigate({ screen: 'device', benchId: device.benchId });
    },
  }));
  const isRepair = devices.some(({ because }) => because === 'repaired bench ID');
  const another = {
    key: 'register',
    label: t('screens:scan.suggestion.register'),
    onChoose: () => {
      onClose();
      navigate({ screen: 'new-device', code: text });
    },
  };
  return (
    <Dialog title={t('screens:scan.suggestion.title')} onClose={onClose}>
      <p>
        {t(isRepair ? 'screens:scan.suggestion.text' : 'screens:scan.suggestion.code', {
          text: shortCode(text),
        })}
      </p>
      <MarkingDataLines data={data} />
      <NumberedChoices
        choices={[
          ...choices,
          ...(isRepair ? [] : [another]),
          { key: 'cancel', label: t('screens:scan.suggestion.none'), onChoose: onClose },
        ]}
      />
    </Dialog>
  );
};
