/** Asks before an inspection begins, with the cautions that hold for all of it. */

import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { DeviceSummary } from '../../../src/station/views.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { useStationCommand, useStationQuery } from '../../station/hooks.ts';
import styles from './begin-dialog.module.css';

export interface BeginDialogProps {
  readonly device: DeviceSummary;
  onClose(): void;
}

export const BeginDialog = ({ device, onClose }: BeginDialogProps) => {
  const { t, inLanguage, lengthText } = useText();
  const { run, isRunning, error } = useStationCommand('inspection.start');
  const cautions = useStationQuery('procedure.show', {}).data?.procedure.cautions ?? [];
  const begin = async (): Promise<void> => {
    const result = await run({ benchId: device.benchId });
    if (result.ok) navigate({ screen: 'bench', inspection: result.output.inspection.inspection });
  };
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command' || meaning.command !== 'confirm') return false;
    void begin();
    return true;
  });
  return (
    <Dialog title={t('walk:idle.begin', { device: formatBenchId(device.benchId) })} onClose={onClose}>
      <p className={styles.device}>
        {device.manufacturer} {device.model}, {device.serial}, {lengthText(device.ratedLengthM)}
      </p>
      <ul className={styles.cautions}>
        {cautions.map((caution) => (
          <li key={caution.en}>{inLanguage(caution)}</li>
        ))}
      </ul>
      <AlertLine sentence={error?.sentence} />
      <div className={styles.actions}>
        <Button onPress={onClose}>{t('walk:picker.cancel')}</Button>
        <Button look="primary" size="large" isRunning={isRunning} autoFocus onPress={() => void begin()}>
          {t('walk:idle.beginNow')}
        </Button>
      </div>
    </Dialog>
  );
};
