/** Teaches the scanner: a symbol on the screen, scanned three times. */
import { useEffect, useState } from 'react';
import type { KeyboardFault } from '../../../src/domain/scanner/keystroke.ts';
import { type ScanSample, samplesNeeded } from '../../../src/domain/scanner/learn-scanner.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { StationError } from '../../components/station-error.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationCommand, useStationQuery } from '../../station/hooks.ts';
import { openPdf } from '../../station/open-pdf.ts';
import styles from './setup.module.css';
import { useScanSamples } from './use-scan-samples.ts';

export interface TeachScannerProps {
  onLearnt(fault: KeyboardFault | undefined): void;
  onCancel(): void;
}

export const TeachScanner = ({ onLearnt, onCancel }: TeachScannerProps) => {
  const { t } = useText();
  const symbol = useStationQuery('scanner.symbol', {});
  const learn = useStationCommand('scanner.learn');
  const samples = useScanSamples();
  /** How many scans were tried and refused; the next three count anew. */
  const [spent, setSpent] = useState(0);
  const fresh = samples.slice(spent);

  const { run, isRunning } = learn;
  useEffect(() => {
    if (isRunning || samples.length - spent < samplesNeeded) return;
    const teach = async (scans: ScanSample[]): Promise<void> => {
      setSpent(samples.length);
      const result = await run({ scans });
      if (result.ok) onLearnt(result.output.fault);
    };
    void teach(samples.slice(spent, spent + samplesNeeded));
  }, [samples, spent, run, isRunning, onLearnt]);

  if (symbol.error !== undefined) return <StationError error={symbol.error} />;
  const { data } = symbol;
  return (
    <section className={styles.box} aria-labelledby="teach-scanner">
      <h2 id="teach-scanner">{t('screens:scanner.title')}</h2>
      <p>{t('screens:scanner.text')}</p>
      {data === undefined ? null : (
        <img
          className={styles.symbol}
          src={`data:image/png;base64,${data.pngBase64}`}
          alt={t('screens:scanner.symbol', { text: data.text })}
        />
      )}
      <p role="status" className={styles.sign}>
        {t('screens:scanner.count', { count: Math.min(fresh.length, samplesNeeded), needed: samplesNeeded })}
      </p>
      <AlertLine sentence={learn.error?.sentence} />
      <div className={styles.buttons}>
        <Button autoFocus onPress={onCancel}>
          {t('screens:scanner.cancel')}
        </Button>
        {data === undefined ? null : (
          <Button icon="tag" onPress={() => openPdf(data.pdfBase64, 'srl-bench-scanner-symbol.pdf')}>
            {t('screens:scanner.print')}
          </Button>
        )}
      </div>
    </section>
  );
};
