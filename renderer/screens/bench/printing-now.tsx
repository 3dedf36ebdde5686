/** A tag on its way through the printer: what it waits for, and the way to take it back. */
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { useScanHandler } from '../../scan/scan.ts';
import styles from './print-tag.module.css';
import type { PrinterView } from './print-ways.ts';

export interface PrintingNowProps {
  readonly printer: PrinterView;
  /** What keeps it from coming out, in a sentence. */
  readonly problem: string | undefined;
  onCancel(): void;
}

export const PrintingNow = ({ printer, problem, onCancel }: PrintingNowProps) => {
  const { t } = useText();
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command' || meaning.command !== 'cancel') return false;
    onCancel();
    return true;
  });
  return (
    <section className={styles.print}>
      <p className={styles.now} role="status">
        {t('walk:print.printing', { printer: printer.settings.name })}
      </p>
      {problem !== undefined && <p>{t('walk:print.waiting')}</p>}
      <AlertLine sentence={problem} />
      <div>
        <Button icon="cross" onPress={onCancel} autoFocus>
          {t('walk:print.cancel')}
        </Button>
      </div>
    </section>
  );
};
