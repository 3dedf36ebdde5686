/** Sets the offset of a printer from what a person reads off its test pattern. */
import { type FormEvent, useState } from 'react';
import type { OutputOf } from '../../../src/station/contract.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { Choice } from '../../components/choice.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { DialogActions } from '../../components/dialog-actions.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import {
  emptyOffsetDraft,
  fieldsOf,
  isReading,
  perfectReading,
  type ReadingBy,
  type ReadingField,
  readingMarks,
  readingOf,
} from './offset-draft.ts';
import { PatternDrawing } from './pattern-drawing.tsx';
import styles from './printers.module.css';
import type { PrinterDialogProps } from './remove-printer-dialog.tsx';
import { useMovedText } from './use-moved-text.ts';

const labelOf = {
  leftMm: 'screens:printers.left',
  rightMm: 'screens:printers.right',
  topMm: 'screens:printers.top',
  bottomMm: 'screens:printers.bottom',
  fromLeftMm: 'screens:printers.fromLeft',
  fromTopMm: 'screens:printers.fromTop',
} as const satisfies Record<ReadingField, string>;

export const OffsetDialog = ({ printer, onClose }: PrinterDialogProps) => {
  const { t } = useText();
  const { name, stock } = printer.settings;
  const [by, setBy] = useState<ReadingBy>('rulers');
  const [draft, setDraft] = useState(emptyOffsetDraft);
  const [wasTried, setTried] = useState(false);
  const [offset, setOffset] = useState<OutputOf<'printer.calibrate'>>();
  const calibrate = useStationCommand('printer.calibrate');
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setTried(true);
    const reading = readingOf(by, draft);
    if (reading === undefined) return;
    const result = await calibrate.run({ printerId: printer.printerId, reading });
    if (result.ok) setOffset(result.output);
  };
  const movedText = useMovedText();
  const title = t('screens:printers.offsetTitle', { name });
  if (offset !== undefined) {
    const moved = movedText(offset);
    return (
      <Dialog title={title} onClose={onClose}>
        <p role="status">
          {moved === undefined
            ? t('screens:printers.offsetNone')
            : t('screens:printers.offsetNow', { moved })}
        </p>
        <div className={styles.buttons}>
          <Button look="primary" onPress={onClose} autoFocus>
            {t('screens:printers.close')}
          </Button>
        </div>
      </Dialog>
    );
  }
  return (
    <Dialog title={title} onClose={onClose}>
      <form className={styles.form} onSubmit={(event) => void submit(event)}>
        <p>{t('screens:printers.offsetText')}</p>
        <Choice<ReadingBy>
          label={t('screens:printers.readBy')}
          isCompact
          value={by}
          options={(['rulers', 'cross'] as const).map((value) => ({
            value,
            label: t(`screens:printers.reading.${value}`),
          }))}
          onChange={setBy}
        />
        <div className={styles.beside}>
          <PatternDrawing stock={stock} by={by} />
          <p>{t(by === 'rulers' ? 'screens:printers.rulersText' : 'screens:printers.crossText')}</p>
        </div>
        <div className={styles.pair}>
          {fieldsOf(by).map((field, index) => (
            <TextInput
              key={field}
              label={`${readingMarks[field]}: ${t(labelOf[field])}`}
              value={draft[field]}
              inputMode="decimal"
              autoFocus={index === 0}
              placeholder={String(perfectReading(field, stock))}
              onChange={(text) => setDraft({ ...draft, [field]: text })}
              error={wasTried && !isReading(draft[field]) ? t('screens:printers.fault.reading') : undefined}
            />
          ))}
        </div>
        <AlertLine sentence={calibrate.error?.sentence} />
        <DialogActions isRunning={calibrate.isRunning} onCancel={onClose} />
      </form>
    </Dialog>
  );
};
