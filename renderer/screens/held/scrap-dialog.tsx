/** Scraps a device: cut, defaced, before a witness whose badge is scanned, with photos; it is final. */
import { type FormEvent, useState } from 'react';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { BenchId } from '../../../src/domain/brand.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { CheckBox } from '../../components/check-box.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { DialogActions } from '../../components/dialog-actions.tsx';
import { faultsOf } from '../../components/form-faults.ts';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { call } from '../../station/client.ts';
import { useStationCommand } from '../../station/hooks.ts';
import { DocumentsInput, type GivenDocument } from './documents-input.tsx';
import styles from './held.module.css';

export interface ScrapDialogProps {
  readonly benchId: BenchId;
  onClose(): void;
}

export const ScrapDialog = ({ benchId, onClose }: ScrapDialogProps) => {
  const { t } = useText();
  const [isCut, setCut] = useState(false);
  const [isDefaced, setDefaced] = useState(false);
  const [badge, setBadge] = useState('');
  const [unknownBadge, setUnknownBadge] = useState<string>();
  const [photos, setPhotos] = useState<readonly GivenDocument[]>([]);
  const scrap = useStationCommand('device.scrap');
  const faults = faultsOf(scrap.error);
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'badge') return false;
    setBadge(meaning.badge);
    return true;
  });
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const witness = await call('desk.user', { badge });
    setUnknownBadge(witness.ok ? undefined : witness.error.sentence);
    if (!witness.ok) return;
    const result = await scrap.run({
      benchId,
      lifelineCut: isCut,
      markingDefaced: isDefaced,
      witness: witness.output.personId,
      photos: [...photos],
    });
    if (result.ok) onClose();
  };
  return (
    <Dialog title={t('held:scrap.title', { benchId: formatBenchId(benchId) })} onClose={onClose} isWide>
      <form className={styles.form} onSubmit={(event) => void submit(event)}>
        <p className={styles.reason}>{t('held:scrap.hint')}</p>
        <CheckBox number={1} isSelected={isCut} onChange={setCut}>
          {t('held:scrap.cut')}
        </CheckBox>
        <CheckBox number={2} isSelected={isDefaced} onChange={setDefaced}>
          {t('held:scrap.defaced')}
        </CheckBox>
        <TextInput
          label={t('held:scrap.witness')}
          value={badge}
          onChange={setBadge}
          error={unknownBadge ?? faults.at('witness')}
        />
        <DocumentsInput
          label={t('held:scrap.photos')}
          documents={photos}
          onChange={setPhotos}
          error={faults.at('photos', 'documents')}
        />
        <AlertLine sentence={faults.rest()} />
        <DialogActions
          isRunning={scrap.isRunning}
          onCancel={onClose}
          save={{ label: t('held:scrap.do'), look: 'remove', icon: 'cross' }}
        />
      </form>
    </Dialog>
  );
};
