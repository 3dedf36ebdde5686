/** A maker's code as it stands in a dialog: what it says, and what is to be minded about it. */
import type { MarkingData } from '../../src/domain/marking-data.ts';
import { useText } from '../i18n/text.ts';
import styles from './dialogs.module.css';
import { useMarkingWords } from './use-marking-words.ts';

export const MarkingDataLines = ({ data }: { readonly data: MarkingData | undefined }) => {
  const { t } = useText();
  const wordsOf = useMarkingWords();
  if (data === undefined) return null;
  const words = wordsOf(data.identification);
  return (
    <>
      {words === '' ? null : <p className={styles.says}>{t('screens:markingData.says', { words })}</p>}
      {data.names === 'its model' ? <p>{t('screens:markingData.modelOnly')}</p> : null}
      {data.separatorsMayBeLost ? <p>{t('screens:markingData.doubt')}</p> : null}
    </>
  );
};
