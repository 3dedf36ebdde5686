/** Takes a printer off the list, once somebody has said so twice. */
import { AlertLine } from '../../components/alert-line.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { NumberedChoices } from '../../components/numbered-choices.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import type { PrinterView } from './printer-draft.ts';

export interface PrinterDialogProps {
  readonly printer: PrinterView;
  onClose(): void;
}

export const RemovePrinterDialog = ({ printer, onClose }: PrinterDialogProps) => {
  const { t } = useText();
  const { run, error } = useStationCommand('printer.remove');
  const remove = async (): Promise<void> => {
    if ((await run({ printerId: printer.printerId })).ok) onClose();
  };
  return (
    <Dialog title={t('screens:printers.removeTitle', { name: printer.settings.name })} onClose={onClose}>
      <p>{t('screens:printers.removeText')}</p>
      <AlertLine sentence={error?.sentence} />
      <NumberedChoices
        choices={[
          { key: 'remove', label: t('screens:printers.removeYes'), onChoose: () => void remove() },
          { key: 'keep', label: t('screens:printers.removeNo'), isPrimary: true, onChoose: onClose },
        ]}
      />
    </Dialog>
  );
};
