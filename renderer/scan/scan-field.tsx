/** The scan field of the header: shows that the scanner is listened to, what came last, and takes typed codes. */
import { type FormEvent, useEffect, useId, useRef, useState } from 'react';
import { Button } from '../components/button.tsx';
import { Icon } from '../components/icon.tsx';
import { classes } from '../design/classes.ts';
import { useText } from '../i18n/text.ts';
import { useScanBoard, useScanReading } from './scan.ts';
import styles from './scan-field.module.css';

/** When the window came to listen to the scanner: in the timeline of the page, for whoever measures its start. */
const readyMark = 'scan-field';

export const ScanField = () => {
  const { t } = useText();
  const board = useScanBoard();
  const reading = useScanReading();
  const [typed, setTyped] = useState('');
  const input = useRef<HTMLInputElement>(null);
  const id = useId();
  useEffect(() => {
    performance.mark(readyMark);
  }, []);
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    const text = typed.trim();
    setTyped('');
    input.current?.blur();
    if (text !== '') board.submit(text, true);
  };
  const isSpare = !reading.isReading && reading.last !== undefined;
  const state = reading.isReading ? t('screens:scan.reading') : t('screens:scan.ready');
  return (
    <form className={styles.form} onSubmit={submit}>
      <label className={styles.label} htmlFor={id}>
        {t('screens:scan.label')}
      </label>
      <div className={styles.field}>
        <Icon name="scan" />
        <input
          id={id}
          ref={input}
          className={styles.input}
          value={typed}
          onChange={(event) => setTyped(event.target.value)}
          placeholder={t('screens:scan.placeholder')}
          autoComplete="off"
          spellCheck="false"
          aria-describedby={`${id}-state`}
        />
        <span id={`${id}-state`} className={styles.states} aria-live="polite">
          {reading.last === undefined ? null : (
            <span className={styles.last}>{t('screens:scan.last', { text: shorten(reading.last) })}</span>
          )}
          <span className={classes(styles.state, isSpare && styles.spare)}>{state}</span>
        </span>
      </div>
      <div role="alert">
        {reading.error === undefined ? null : <p className={styles.error}>{reading.error}</p>}
      </div>
      <div role="status">
        {reading.notice === undefined ? null : (
          <div className={styles.notice}>
            <p>{t(`screens:scan.notice.${reading.notice}`)}</p>
            <Button onPress={board.dismissNotice}>{t('screens:scan.dismiss')}</Button>
          </div>
        )}
      </div>
    </form>
  );
};

/** A separator that a scanner sends is shown as a dot; what is cut off is more than the field has room for. */
const shorten = (text: string): string => {
  const seen = text.replace(/\p{C}/gu, '·');
  return seen.length > 18 ? `${seen.slice(0, 17)}…` : seen;
};
