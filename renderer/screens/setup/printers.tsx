/** The printers of the station: where tags go, how each printer is, and how well it prints. */
import { useRef, useState } from 'react';
import { Button } from '../../components/button.tsx';
import { StationError } from '../../components/station-error.tsx';
import { useText } from '../../i18n/text.ts';
import { useLostFocus } from '../../navigation/use-lost-focus.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { useSignedIn } from '../../station/status.ts';
import { OffsetDialog } from './offset-dialog.tsx';
import type { PrinterView } from './printer-draft.ts';
import { PrinterForm } from './printer-form.tsx';
import { PrinterRow, type PrinterTask } from './printer-row.tsx';
import { RemovePrinterDialog } from './remove-printer-dialog.tsx';
import styles from './setup.module.css';
import { TestPatternDialog } from './test-pattern-dialog.tsx';

type Task = { readonly task: 'add' } | { readonly task: PrinterTask; readonly printer: PrinterView };

export const Printers = () => {
  const { t } = useText();
  const { data, error } = useStationQuery('printer.list', {});
  const mayChange = useSignedIn()?.roles.includes('administrator') ?? false;
  const [task, setTask] = useState<Task>();
  const close = (): void => setTask(undefined);
  const list = useRef<HTMLElement>(null);
  useLostFocus(list);
  if (error !== undefined) return <StationError error={error} />;
  if (data === undefined) return <p>{t('screens:app.loading')}</p>;
  switch (task?.task) {
    case 'add':
      return <PrinterForm onDone={close} />;
    case 'change':
      return <PrinterForm printer={task.printer} onDone={close} />;
    default:
  }
  return (
    <section ref={list} className={styles.panel} tabIndex={-1} aria-label={t('screens:setup.printers')}>
      {mayChange ? (
        <div className={styles.actions}>
          <Button icon="plus" onPress={() => setTask({ task: 'add' })}>
            {t('screens:printers.add')}
          </Button>
        </div>
      ) : (
        <p>{t('screens:printers.onlyAdministrator')}</p>
      )}
      {data.printers.length === 0 && <p>{t('screens:printers.none')}</p>}
      <ul className={styles.list}>
        {data.printers.map((printer) => (
          <PrinterRow
            key={printer.printerId}
            printer={printer}
            mayChange={mayChange}
            onTask={(chosen) => setTask({ task: chosen, printer })}
          />
        ))}
      </ul>
      {task?.task === 'test' && (
        <TestPatternDialog
          printer={task.printer}
          onMeasure={() => setTask({ task: 'offset', printer: task.printer })}
          onClose={close}
        />
      )}
      {task?.task === 'offset' && <OffsetDialog printer={task.printer} onClose={close} />}
      {task?.task === 'remove' && <RemovePrinterDialog printer={task.printer} onClose={close} />}
    </section>
  );
};
