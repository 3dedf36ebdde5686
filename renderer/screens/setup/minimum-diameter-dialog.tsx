/** Enters the least diameter that a manufacturer allows, from its manual, on a model sheet that is there already. */
import { type FormEvent, useState } from 'react';
import { parseDiameter } from '../../../src/domain/length.ts';
import type { ModelSheet } from '../../../src/domain/model-sheet.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { DialogActions } from '../../components/dialog-actions.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import styles from './setup.module.css';

export interface MinimumDiameterDialogProps {
  readonly sheet: ModelSheet;
  onClose(): void;
}

export const MinimumDiameterDialog = ({ sheet, onClose }: MinimumDiameterDialogProps) => {
  const { t, diameterText, diameterUnit } = useText();
  const { lifelineMinimumDiameterMm: known, modelSheetId } = sheet;
  const shown = known === undefined ? '' : diameterText(known);
  const [text, setText] = useState(shown);
  const [wasTried, setTried] = useState(false);
  const setMinimum = useStationCommand('model-sheet.set-minimum-diameter');
  // What is shown is rounded: who leaves it as it is changes nothing.
  const minimumMm = text === shown ? known : parseDiameter(text, diameterUnit);
  const isFit = minimumMm !== undefined && minimumMm > 0;
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setTried(true);
    if (!isFit) return;
    const result = await setMinimum.run({ modelSheetId, lifelineMinimumDiameterMm: minimumMm });
    if (result.ok) onClose();
  };
  return (
    <Dialog
      title={t('evidence:sheet.title', { model: `${sheet.manufacturer} ${sheet.model}` })}
      onClose={onClose}
    >
      <form className={styles.form} onSubmit={(event) => void submit(event)}>
        <p>{t('evidence:sheet.text', { nominal: diameterText(sheet.lifelineDiameterMm) })}</p>
        <TextInput
          label={t('evidence:sheet.label')}
          value={text}
          onChange={setText}
          error={wasTried && !isFit ? t('evidence:sheet.notADiameter') : undefined}
          autoFocus
        />
        <AlertLine sentence={setMinimum.error?.sentence} />
        <DialogActions isRunning={setMinimum.isRunning} onCancel={onClose} />
      </form>
    </Dialog>
  );
};
