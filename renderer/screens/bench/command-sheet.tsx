/** The way to the printed symbols with which the walk is driven by scanner alone. */
import { useState } from 'react';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { call } from '../../station/client.ts';
import { openPdf } from '../../station/open-pdf.ts';
import styles from './command-sheet.module.css';

export const CommandSheet = () => {
  const { t } = useText();
  const [fault, setFault] = useState<string>();
  const open = async (): Promise<void> => {
    const result = await call('command-sheet.show', {});
    if (result.ok) openPdf(result.output.pdfBase64, 'srl-bench-command-sheet.pdf');
    else setFault(result.error.sentence);
  };
  return (
    <div className={styles.sheet}>
      <p>{t('walk:idle.sheet')}</p>
      <Button icon="scan" onPress={() => void open()}>
        {t('walk:idle.printSheet')}
      </Button>
      <AlertLine sentence={fault} />
    </div>
  );
};
