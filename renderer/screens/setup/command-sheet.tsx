/** The command sheet, opened for printing. */
import { useState } from 'react';
import type { CallError } from '../../../src/station/contract.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { Choice } from '../../components/choice.tsx';
import { useText } from '../../i18n/text.ts';
import { call } from '../../station/client.ts';
import { openPdf } from '../../station/open-pdf.ts';
import styles from './setup.module.css';

type Paper = 'A4' | 'Letter';

export const CommandSheet = () => {
  const { t } = useText();
  const [paper, setPaper] = useState<Paper>('A4');
  const [error, setError] = useState<CallError>();
  const open = async (): Promise<void> => {
    const result = await call('command-sheet.show', { paper });
    setError(result.ok ? undefined : result.error);
    if (result.ok) openPdf(result.output.pdfBase64, 'srl-bench-command-sheet.pdf');
  };
  return (
    <section className={styles.box} aria-labelledby="command-sheet">
      <h2 id="command-sheet">{t('screens:setup.sheetTitle')}</h2>
      <p>{t('screens:setup.sheetText')}</p>
      <Choice<Paper>
        label={t('screens:setup.paper')}
        value={paper}
        options={[
          { value: 'A4', label: 'A4' },
          { value: 'Letter', label: 'Letter' },
        ]}
        onChange={setPaper}
      />
      <AlertLine sentence={error?.sentence} />
      <Button icon="scan" onPress={() => void open()}>
        {t('screens:setup.sheetOpen')}
      </Button>
    </section>
  );
};
