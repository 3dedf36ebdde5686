/** The bench card, opened for printing. */
import { useState } from 'react';
import type { CallError, InputOf } from '../../../src/station/contract.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { Choice } from '../../components/choice.tsx';
import { useText } from '../../i18n/text.ts';
import { call } from '../../station/client.ts';
import { openPdf } from '../../station/open-pdf.ts';
import styles from './setup.module.css';

type Asked = InputOf<'bench-card.show'>;
type Card = { readonly [Field in keyof Asked]-?: NonNullable<Asked[Field]> };

export const BenchCard = () => {
  const { t } = useText();
  const [card, setCard] = useState<Card>({ paper: 'A4', languages: 'both' });
  const [error, setError] = useState<CallError>();
  const open = async (): Promise<void> => {
    const result = await call('bench-card.show', card);
    setError(result.ok ? undefined : result.error);
    if (result.ok) openPdf(result.output.pdfBase64, 'srl-bench-bench-card.pdf');
  };
  return (
    <section className={styles.box} aria-labelledby="bench-card">
      <h2 id="bench-card">{t('help:cardBox.title')}</h2>
      <p>{t('help:cardBox.text')}</p>
      <Choice<Card['paper']>
        label={t('screens:setup.paper')}
        isCompact
        value={card.paper}
        options={[
          { value: 'A4', label: 'A4' },
          { value: 'Letter', label: 'Letter' },
        ]}
        onChange={(paper) => setCard({ ...card, paper })}
      />
      <Choice<Card['languages']>
        label={t('help:cardBox.languages')}
        isCompact
        value={card.languages}
        options={[
          { value: 'en', label: t('screens:header.toEnglish') },
          { value: 'es', label: t('screens:header.toSpanish') },
          { value: 'both', label: t('help:cardBox.both') },
        ]}
        onChange={(languages) => setCard({ ...card, languages })}
      />
      <AlertLine sentence={error?.sentence} />
      <Button icon="scan" onPress={() => void open()}>
        {t('help:cardBox.open')}
      </Button>
    </section>
  );
};
