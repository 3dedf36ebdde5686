/** The label of the place where held devices are kept, opened for printing. */
import { useState } from 'react';
import type { CallError } from '../../../src/station/contract.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { call } from '../../station/client.ts';
import { openPdf } from '../../station/open-pdf.ts';
import styles from './setup.module.css';

export const BinLabel = () => {
  const { t } = useText();
  const [code, setCode] = useState('CAGE1');
  const [error, setError] = useState<CallError>();
  const open = async (): Promise<void> => {
    const result = await call('bin-label.show', { code: code.trim().toUpperCase() });
    setError(result.ok ? undefined : result.error);
    if (result.ok) openPdf(result.output.pdfBase64, 'srl-bench-bin-label.pdf');
  };
  return (
    <section className={styles.box} aria-labelledby="bin-label">
      <h2 id="bin-label">{t('screens:setup.binTitle')}</h2>
      <p>{t('screens:setup.binText')}</p>
      <TextInput label={t('screens:setup.binCode')} value={code} onChange={setCode} />
      <AlertLine sentence={error?.sentence} />
      <Button icon="tag" onPress={() => void open()}>
        {t('screens:setup.binOpen')}
      </Button>
    </section>
  );
};
