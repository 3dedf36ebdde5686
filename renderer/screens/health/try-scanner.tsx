/** Tries the scanner on a symbol that is known: whether the layout, Caps Lock and the pace are right. */
import { useState } from 'react';
import { slowestScanGapMs } from '../../../src/domain/scanner/scanner.ts';
import { type TriedScan, tryScan } from '../../../src/domain/scanner/try-scan.ts';
import { Button } from '../../components/button.tsx';
import { type Text, useText } from '../../i18n/text.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { useScanSamples } from '../setup/use-scan-samples.ts';
import styles from './health.module.css';

export const TryScanner = () => {
  const { t } = useText();
  const [isTrying, setTrying] = useState(false);
  return (
    <section className={styles.box} aria-labelledby="try-scanner">
      <h2 id="try-scanner">{t('health:scanner.title')}</h2>
      <p>{t('health:scanner.text')}</p>
      {isTrying ? (
        <Trial onEnd={() => setTrying(false)} />
      ) : (
        <Button icon="scan" onPress={() => setTrying(true)}>
          {t('health:scanner.begin')}
        </Button>
      )}
    </section>
  );
};

/** Every key goes to the trial while it lasts. */
const Trial = ({ onEnd }: { onEnd(): void }) => {
  const text = useText();
  const { t } = text;
  const { data } = useStationQuery('scanner.symbol', {});
  const latest = useScanSamples().at(-1);
  return (
    <>
      {data === undefined ? null : (
        <img
          className={styles.symbol}
          src={`data:image/png;base64,${data.pngBase64}`}
          alt={t('screens:scanner.symbol', { text: data.text })}
        />
      )}
      <p role="status">
        {latest === undefined ? t('health:scanner.waiting') : sentenceOf(tryScan(latest), text)}
      </p>
      <Button autoFocus onPress={onEnd}>
        {t('health:scanner.stop')}
      </Button>
    </>
  );
};

const sentenceOf = (tried: TriedScan, { t }: Text): string => {
  if (!tried.isRead) return t('health:scanner.notFound', { text: tried.text });
  const { gapMs: gap, end, fault } = tried;
  if (tried.isSlow) return t('health:scanner.slow', { gap, most: slowestScanGapMs });
  if (fault !== undefined) return t('health:scanner.fault', { why: t(`screens:scanner.fault.${fault}`) });
  return t('health:scanner.good', { gap, end: end === 'none' ? t('health:scanner.endNone') : end });
};
