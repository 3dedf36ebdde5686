/** What the code that was scanned last says of the device that is being registered. */
import { useText } from '../../i18n/text.ts';
import { useMarkingWords } from '../../scan/use-marking-words.ts';
import styles from './new-device.module.css';
import type { ScannedCode } from './scanned-codes.ts';

export const CodeNotice = ({ scanned }: { readonly scanned: ScannedCode | undefined }) => {
  const { t } = useText();
  const wordsOf = useMarkingWords();
  const data = scanned?.data;
  const words = data === undefined ? '' : wordsOf(data.identification);
  return (
    <div role="status">
      {data === undefined ? null : (
        <p className={styles.notice}>
          {words === '' ? null : <strong>{t('screens:markingData.says', { words })}</strong>}{' '}
          {data.names === 'its model' ? t('screens:markingData.modelOnly') : null}{' '}
          {data.separatorsMayBeLost ? t('screens:markingData.doubt') : null}
        </p>
      )}
    </div>
  );
};
