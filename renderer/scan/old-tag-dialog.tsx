/** Says, large, that the scanned tag is not the one that belongs on the device now. */
import { formatBenchId } from '../../src/domain/bench-id/bench-id.ts';
import { Dialog } from '../components/dialog.tsx';
import { NumberedChoices } from '../components/numbered-choices.tsx';
import { useText } from '../i18n/text.ts';
import { navigate } from '../navigation/route.ts';
import styles from './dialogs.module.css';
import type { ScanMeaning } from './scan.ts';

type ScannedDevice = Extract<ScanMeaning, { meaning: 'device' }>;

type PastTagJudgement = Extract<NonNullable<ScannedDevice['tag']>, { state: 'superseded' | 'void' }>;

export interface OldTagDialogProps {
  readonly device: ScannedDevice['device'];
  readonly tag: PastTagJudgement;
  onClose(): void;
}

export const OldTagDialog = ({ device, tag, onClose }: OldTagDialogProps) => {
  const { t, dateText } = useText();
  const values = {
    benchId: formatBenchId(device.benchId),
    old: tag.tag.tagNumber,
    ended: dateText(tag.tag.endedOn),
    current: tag.by?.tagNumber ?? '',
    date: tag.by === undefined ? '' : dateText(tag.by.issuedOn),
  };
  const open = (): void => {
    onClose();
    navigate({ screen: 'device', benchId: device.benchId });
  };
  return (
    <Dialog title={t('screens:scan.oldTag.title')} onClose={onClose} isLoud>
      <p className={styles.large}>
        {tag.by === undefined
          ? t('screens:scan.oldTag.noneCurrent', values)
          : t(
              tag.by.kind === 'status'
                ? 'screens:scan.oldTag.statusCurrent'
                : 'screens:scan.oldTag.quarantineCurrent',
              values,
            )}
      </p>
      <p>{t(`screens:scan.oldTag.because.${tag.tag.because}`, values)}</p>
      <NumberedChoices
        choices={[
          { key: 'open', label: t('screens:scan.oldTag.open'), isPrimary: true, onChoose: open },
          { key: 'close', label: t('screens:scan.oldTag.close'), onChoose: onClose },
        ]}
      />
    </Dialog>
  );
};
