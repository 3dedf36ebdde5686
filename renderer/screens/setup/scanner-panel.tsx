/** The scanner of the station: what is known of how it types, and teaching it. */
import { useState } from 'react';
import type { KeyboardFault } from '../../../src/domain/scanner/keystroke.ts';
import { type Scanner, slowestScanGapMs } from '../../../src/domain/scanner/scanner.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import { useReadyStation } from '../../station/status.ts';
import styles from './setup.module.css';
import { TeachScanner } from './teach-scanner.tsx';

type Step =
  | { readonly step: 'known'; readonly learnt?: true; readonly fault?: KeyboardFault }
  | { readonly step: 'teach' };

export const ScannerPanel = () => {
  const { t } = useText();
  const scanner = useReadyStation()?.scanner;
  const forget = useStationCommand('scanner.forget');
  const [step, setStep] = useState<Step>({ step: 'known' });
  if (step.step === 'teach') {
    return (
      <TeachScanner
        onLearnt={(fault) =>
          setStep({ step: 'known', learnt: true, ...(fault === undefined ? {} : { fault }) })
        }
        onCancel={() => setStep({ step: 'known' })}
      />
    );
  }
  const forgetIt = async (): Promise<void> => {
    await forget.run({});
    setStep({ step: 'known' });
  };
  return (
    <section className={styles.box} aria-labelledby="scanner">
      <h2 id="scanner">{t('screens:scanner.known')}</h2>
      {scanner === undefined ? (
        <p>{t('screens:scanner.unknown', { most: slowestScanGapMs })}</p>
      ) : (
        <ScannerFacts scanner={scanner} />
      )}
      <div role="status" className={styles.form}>
        {step.learnt && <p>{t('screens:scanner.learnt')}</p>}
        {step.fault === undefined ? null : <p>{t(`screens:scanner.fault.${step.fault}`)}</p>}
      </div>
      <AlertLine sentence={forget.error?.sentence} />
      <div className={styles.buttons}>
        <Button icon="scan" autoFocus={step.learnt ?? false} onPress={() => setStep({ step: 'teach' })}>
          {t(scanner === undefined ? 'screens:scanner.teach' : 'screens:scanner.again')}
        </Button>
        {scanner === undefined ? null : (
          <Button isRunning={forget.isRunning} onPress={() => void forgetIt()}>
            {t('screens:scanner.forget')}
          </Button>
        )}
      </div>
    </section>
  );
};

const ScannerFacts = ({ scanner }: { readonly scanner: Scanner }) => {
  const { t } = useText();
  const affix = (text: string): string => (text === '' ? t('screens:scanner.nothing') : `“${text}”`);
  return (
    <dl className={styles.facts}>
      <dt>{t('screens:scanner.pace')}</dt>
      <dd>{t('screens:scanner.paceMs', { gap: scanner.gapMs })}</dd>
      <dt>{t('screens:scanner.end')}</dt>
      <dd>{t(`screens:scanner.endOf.${scanner.end}`)}</dd>
      <dt>{t('screens:scanner.prefix')}</dt>
      <dd>{affix(scanner.prefix)}</dd>
      <dt>{t('screens:scanner.suffix')}</dt>
      <dd>{affix(scanner.suffix)}</dd>
      <dt>{t('screens:scanner.places')}</dt>
      <dd>{t(`screens:scanner.placesOf.${scanner.usesUsPlaces ? 'us' : 'computer'}`)}</dd>
    </dl>
  );
};
