/** What stands in the window until the station has answered for the first time. */
import type { CallError } from '../../src/station/contract.ts';
import { useText } from '../i18n/text.ts';
import { AlertLine } from './alert-line.tsx';
import { Button } from './button.tsx';
import styles from './opening.module.css';

export const Opening = ({ error, onRetry }: { readonly error: CallError | undefined; onRetry(): void }) => {
  const { t } = useText();
  return (
    <main className={styles.opening}>
      <h1>{t('screens:app.name')}</h1>
      {error === undefined ? <p>{t('screens:app.opening')}</p> : null}
      <AlertLine sentence={error?.sentence} />
      {error === undefined ? null : (
        <Button look="primary" onPress={onRetry}>
          {t('screens:app.retry')}
        </Button>
      )}
    </main>
  );
};
