/** Adds a printer, or changes one: its kind first, then only what that kind needs. */
import { type FormEvent, useState } from 'react';
import { tagKindSchema } from '../../../src/domain/tag-content.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { CheckBox } from '../../components/check-box.tsx';
import { Choice } from '../../components/choice.tsx';
import { DialogActions } from '../../components/dialog-actions.tsx';
import { faultsOf, hasFaults } from '../../components/form-faults.ts';
import { useText } from '../../i18n/text.ts';
import { useFocusWithin } from '../../navigation/use-focus-within.ts';
import { useStationCommand } from '../../station/hooks.ts';
import { Durability } from './durability.tsx';
import { faceDraftOf, faceOf, flatFace, isSoundFace } from './face-draft.ts';
import { FaceFields } from './face-fields.tsx';
import { PrinterCondition } from './printer-condition.tsx';
import {
  draftOf,
  faultsIn,
  freshDraft,
  ofKind,
  type PrinterDraft,
  type PrinterKind,
  type PrinterView,
  printerKinds,
  settingsOf,
} from './printer-draft.ts';
import { PrinterPlaceFields } from './printer-place-fields.tsx';
import { PrinterStockFields } from './printer-stock-fields.tsx';
import styles from './printers.module.css';
import { usePrinterCheck } from './use-printer-check.ts';

export interface PrinterFormProps {
  /** Absent for a new one. */
  readonly printer?: PrinterView;
  onDone(): void;
}

export const PrinterForm = ({ printer, onDone }: PrinterFormProps) => {
  const { t } = useText();
  const [draft, setDraft] = useState<PrinterDraft>(printer === undefined ? freshDraft : draftOf(printer));
  const [wasTried, setTried] = useState(false);
  const [face, setFace] = useState(printer === undefined ? flatFace : faceDraftOf(printer.face));
  const save = useStationCommand('printer.save');
  const check = usePrinterCheck();
  const form = useFocusWithin<HTMLFormElement>('input:checked');
  const faults = faultsIn(draft);
  const refused = faultsOf(save.error);
  const { kind, tagKinds } = draft;

  const change = (part: Partial<PrinterDraft>): void => setDraft({ ...draft, ...part });
  const faultAt = (field: keyof typeof faults, ...names: readonly string[]): string | undefined => {
    const fault = wasTried ? faults[field] : undefined;
    return fault === undefined ? refused.at(...names) : t(fault);
  };
  const tryOut = async (): Promise<void> => {
    setTried(true);
    if (!hasFaults(faults)) await check.ask(settingsOf(draft));
  };
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setTried(true);
    if (hasFaults(faults) || !isSoundFace(face)) return;
    const result = await save.run({
      ...(printer === undefined ? {} : { printerId: printer.printerId }),
      settings: settingsOf(draft),
      tagKinds: [...tagKinds],
      face: faceOf(face),
    });
    if (result.ok) onDone();
  };
  const fields = { draft, change, faultAt };
  return (
    <form
      ref={form}
      className={styles.form}
      aria-labelledby="printer-form"
      onSubmit={(event) => void submit(event)}
    >
      <h2 id="printer-form">
        {printer === undefined
          ? t('screens:printers.newTitle')
          : t('screens:printers.changeTitle', { name: printer.settings.name })}
      </h2>
      <Choice<PrinterKind>
        label={t('screens:printers.kindLabel')}
        value={kind}
        options={printerKinds.map((value) => ({ value, label: t(`screens:printers.kind.${value}`) }))}
        onChange={(chosen) => setDraft(ofKind(draft, chosen))}
      />
      <p className={styles.soft}>{t(`screens:printers.kindText.${kind}`)}</p>
      <div className={styles.columns}>
        <div className={styles.form}>
          <PrinterPlaceFields {...fields} />
          <PrinterStockFields {...fields} />
          <FaceFields draft={face} change={(part) => setFace({ ...face, ...part })} />
          <fieldset>
            <legend className={styles.name}>{t('screens:printers.tagKinds')}</legend>
            <div className={styles.boxes}>
              {tagKindSchema.options.map((tagKind) => (
                <CheckBox
                  key={tagKind}
                  isSelected={tagKinds.includes(tagKind)}
                  onChange={(isIn) =>
                    change({
                      tagKinds: isIn ? [...tagKinds, tagKind] : tagKinds.filter((other) => other !== tagKind),
                    })
                  }
                >
                  {t(`screens:printers.tagKind.${tagKind}`)}
                </CheckBox>
              ))}
            </div>
          </fieldset>
        </div>
        <Durability />
      </div>
      <PrinterCondition check={check} />
      <AlertLine sentence={refused.rest()} />
      <div className={styles.end}>
        <Button isRunning={check.isAsking} onPress={() => void tryOut()}>
          {t('screens:printers.check')}
        </Button>
        <DialogActions isRunning={save.isRunning} onCancel={onDone} />
      </div>
    </form>
  );
};
