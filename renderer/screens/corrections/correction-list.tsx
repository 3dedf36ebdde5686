/** Corrections, newest first: what is said now, and what was said before, by whom it was corrected and why. */
import type { AmendmentView } from '../../../src/station/amendment-view.ts';
import { useText } from '../../i18n/text.ts';
import styles from './corrections.module.css';
import { useCorrectionWords } from './use-correction-words.ts';

export const CorrectionList = ({ amendments }: { readonly amendments: readonly AmendmentView[] }) => {
  const { t, dateText } = useText();
  const words = useCorrectionWords();
  if (amendments.length === 0) return <p>{t('corrections:noneMade')}</p>;
  return (
    <ul className={styles.list}>
      {amendments.map((amendment) => {
        const { what, was, now } = words(amendment);
        const { seq, on, by, because } = amendment;
        return (
          <li key={seq} className={styles.item}>
            <div className={styles.words}>
              <span className={styles.name}>{t('corrections:line', { what, now })}</span>
              <span className={styles.soft}>
                {t('corrections:was', { date: dateText(on), name: by, was, because })}
              </span>
            </div>
          </li>
        );
      })}
    </ul>
  );
};
