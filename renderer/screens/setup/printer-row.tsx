/** One printer of the station. */

import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { PrinterCondition } from './printer-condition.tsx';
import type { PrinterView } from './printer-draft.ts';
import { placeOf } from './printer-draft.ts';
import styles from './printers.module.css';
import { useMovedText } from './use-moved-text.ts';
import { usePrinterCheck } from './use-printer-check.ts';

export type PrinterTask = 'change' | 'test' | 'offset' | 'remove';

export interface PrinterRowProps {
  readonly printer: PrinterView;
  readonly mayChange: boolean;
  onTask(task: PrinterTask): void;
}

const tasks = ['test', 'offset', 'change', 'remove'] as const satisfies readonly PrinterTask[];

export const PrinterRow = ({ printer, mayChange, onTask }: PrinterRowProps) => {
  const { t } = useText();
  const check = usePrinterCheck();
  const { settings, tagKinds } = printer;
  const { name, kind, stock, dpi, offset } = settings;
  const kinds = tagKinds.map((tagKind) => t(`screens:printers.tagKind.${tagKind}`)).join(', ');
  const line = t('screens:printers.stockLine', { width: stock.widthMm, height: stock.heightMm, dpi });
  const moved = useMovedText()(offset);
  return (
    <li className={styles.printer}>
      <div className={styles.about}>
        <h2 className={styles.name}>{name}</h2>
        <p>
          {t(`screens:printers.kind.${kind}`)}: <span className={styles.place}>{placeOf(settings)}</span>
        </p>
        <p className={styles.soft}>
          {moved === undefined ? line : `${line}, ${t('screens:printers.offsetLine', { moved })}`}
        </p>
        <p>{kinds === '' ? t('screens:printers.noTagKinds') : t('screens:printers.goesThere', { kinds })}</p>
      </div>
      <PrinterCondition check={check} />
      <div className={styles.buttons}>
        <Button
          label={`${t('screens:printers.check')}: ${name}`}
          isRunning={check.isAsking}
          onPress={() => void check.ask(settings)}
        >
          {t('screens:printers.check')}
        </Button>
        {mayChange &&
          tasks.map((task) => (
            <Button
              key={task}
              label={`${t(`screens:printers.${task}`)}: ${name}`}
              onPress={() => onTask(task)}
            >
              {t(`screens:printers.${task}`)}
            </Button>
          ))}
      </div>
    </li>
  );
};
