/** Where the tag was saved when it was opened for printing. */
import type { OutputOf } from '../../../src/station/contract.ts';
import { useText } from '../../i18n/text.ts';
import { fileNameOf } from './file-name.ts';
import styles from './print-tag.module.css';

export const IssuedNote = ({ issued }: { readonly issued: OutputOf<'tag.issue'> }) => {
  const { t } = useText();
  return (
    <div className={styles.note} role="status">
      <p>
        {t('walk:tag.saved')} <strong>{issued.pdfPath}</strong> {t('walk:tag.savedToo')}{' '}
        <strong>{fileNameOf(issued.pngPath)}</strong>.
      </p>
      {issued.symbols.length > 1 && <p>{t('walk:tag.readBack')}</p>}
    </div>
  );
};
