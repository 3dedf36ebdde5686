/** What is known of a tag that a printer took: that it came out, or only that it was handed over. */
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './print-tag.module.css';
import type { PrintStep } from './use-print-tag.ts';

export const PrintedNote = ({ printed }: { readonly printed: Extract<PrintStep, { step: 'printed' }> }) => {
  const { t } = useText();
  const printer = printed.printer.settings.name;
  return (
    <div className={styles.note} role="status">
      <p className={styles.done}>
        <Icon name="check" />
        {t(printed.confirmed ? 'walk:print.printed' : 'walk:print.sent', { printer })}
      </p>
      {printed.files.length > 0 && (
        <p>
          {t('walk:print.savedAs')} <strong>{printed.files.join(', ')}</strong>
        </p>
      )}
    </div>
  );
};
