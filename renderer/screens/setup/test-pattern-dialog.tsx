/** Prints the test pattern and says how the print goes. */
import { useState } from 'react';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import { hasEnded, usePrintJob } from '../../station/print-job.ts';
import { PatternDrawing } from './pattern-drawing.tsx';
import styles from './printers.module.css';
import type { PrinterDialogProps } from './remove-printer-dialog.tsx';

export interface TestPatternDialogProps extends PrinterDialogProps {
  /** Goes on to the offset, which is read off the pattern. */
  onMeasure(): void;
}

export const TestPatternDialog = ({ printer, onMeasure, onClose }: TestPatternDialogProps) => {
  const { t } = useText();
  const { stock, name } = printer.settings;
  const test = useStationCommand('printer.test');
  const cancel = useStationCommand('print.cancel');
  const [job, setJob] = useState<number>();
  const view = usePrintJob(job);
  const { status } = view;
  const isGoing = test.isRunning || (job !== undefined && !hasEnded(view));
  const print = async (): Promise<void> => {
    if (isGoing) return;
    setJob(undefined);
    const result = await test.run({ printerId: printer.printerId });
    if (result.ok) setJob(result.output.job);
  };
  const problem = status?.state === 'printing' ? status.problem : undefined;
  const refused = status?.state === 'refused' ? status.sentence : undefined;
  const isPrinted = status?.state === 'printed';
  return (
    <Dialog title={t('screens:printers.testTitle', { name })} onClose={onClose}>
      <div className={styles.beside}>
        <PatternDrawing stock={stock} by={undefined} />
        <p>{t('screens:printers.testText', { width: stock.widthMm, height: stock.heightMm })}</p>
      </div>
      <div role="status" className={styles.state}>
        {isGoing && <p>{t('screens:printers.testing')}</p>}
        {isPrinted && (
          <>
            <Icon name="check" />
            <p>
              {t(status.confirmed ? 'screens:printers.testPrinted' : 'screens:printers.testSent')}{' '}
              {status.files.length > 0 && (
                <span className={styles.place}>
                  {t('screens:printers.testFiles')} {status.files.join(', ')}
                </span>
              )}
            </p>
          </>
        )}
      </div>
      <AlertLine sentence={test.error?.sentence ?? view.error?.sentence ?? problem ?? refused} />
      <div className={styles.buttons}>
        <Button onPress={onClose}>{t('screens:printers.close')}</Button>
        {isGoing && job !== undefined && (
          <Button onPress={() => void cancel.run({ job })}>{t('screens:printers.testCancel')}</Button>
        )}
        <Button look={isPrinted ? 'plain' : 'primary'} isRunning={isGoing} onPress={() => void print()}>
          {t(job === undefined ? 'screens:printers.testStart' : 'screens:printers.testAgain')}
        </Button>
        {isPrinted && (
          <Button look="primary" onPress={onMeasure}>
            {t('screens:printers.testMeasure')}
          </Button>
        )}
      </div>
    </Dialog>
  );
};
