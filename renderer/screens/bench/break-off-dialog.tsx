/** Breaks an inspection off: asks why, and warns that findings keep the device out of service. */
import { type FormEvent, useState } from 'react';
import type { InspectionView } from '../../../src/station/views.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { useStationCommand } from '../../station/hooks.ts';
import styles from './break-off-dialog.module.css';

export interface BreakOffDialogProps {
  readonly inspection: InspectionView;
  onClose(): void;
}

export const BreakOffDialog = ({ inspection, onClose }: BreakOffDialogProps) => {
  const { t } = useText();
  const [why, setWhy] = useState('');
  const [isWhyMissing, setWhyMissing] = useState(false);
  const { run, isRunning, error } = useStationCommand('inspection.break-off');
  const hasFindings =
    Object.values(inspection.answers).some(({ answer }) => answer.kind === 'defects') ||
    (inspection.verdict.kind !== 'pass' && inspection.verdict.reasons.length > 0);

  const breakOff = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    if (why.trim() === '') return setWhyMissing(true);
    const result = await run({ inspection: inspection.inspection, why });
    if (!result.ok) return;
    const { benchId } = inspection.device;
    navigate(
      result.output.removed ? { screen: 'tag', benchId, kind: 'quarantine' } : { screen: 'device', benchId },
    );
  };

  return (
    <Dialog title={t('walk:breakOff.title')} onClose={onClose}>
      <form className={styles.form} onSubmit={(event) => void breakOff(event)}>
        <p className={hasFindings ? styles.warning : undefined}>
          {t(hasFindings ? 'walk:breakOff.findings' : 'walk:breakOff.clean')}
        </p>
        <TextInput
          label={t('walk:breakOff.why')}
          value={why}
          onChange={setWhy}
          error={isWhyMissing && why.trim() === '' ? t('walk:breakOff.whyNeeded') : undefined}
          autoFocus
        />
        <AlertLine sentence={error?.sentence} />
        <div className={styles.actions}>
          <Button onPress={onClose}>{t('walk:breakOff.keep')}</Button>
          <Button type="submit" look={hasFindings ? 'remove' : 'plain'} isRunning={isRunning}>
            {t('walk:breakOff.confirm')}
          </Button>
        </div>
      </form>
    </Dialog>
  );
};
