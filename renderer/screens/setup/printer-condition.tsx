/** How a printer is, in words. */
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './printers.module.css';
import type { PrinterCheck } from './use-printer-check.ts';

export const PrinterCondition = ({ check }: { readonly check: PrinterCheck }) => {
  const { t } = useText();
  const { result, isAsking } = check;
  const problem = result?.ok === false ? result.error.sentence : result?.output.problem;
  return (
    <div className={styles.condition} role="status">
      {isAsking && <p>{t('screens:printers.checking')}</p>}
      {problem !== undefined && (
        <p className={styles.state}>
          <Icon name="warning" />
          <span>{problem}</span>
        </p>
      )}
      {result?.ok === true && problem === undefined && (
        <p className={styles.state}>
          <Icon name={result.output.condition === 'stopped' ? 'warning' : 'check'} />
          <span>{t(`screens:printers.condition.${result.output.condition}`)}</span>
        </p>
      )}
      {result?.ok === true && result.output.makeAndModel !== undefined && (
        <p className={styles.soft}>{result.output.makeAndModel}</p>
      )}
    </div>
  );
};
