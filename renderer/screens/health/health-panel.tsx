/** How the station stands: looked over when the page opens, told the gravest first, with the ways to look closer. */
import { useEffect } from 'react';
import { byGravity, type Finding } from '../../../src/domain/health/finding.ts';
import { countsOf, healthReport } from '../../../src/domain/health/report.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import { useNumberedActs } from '../../scan/use-numbered-acts.ts';
import { saveText } from '../../station/save-text.ts';
import { useWork } from '../../station/use-work.ts';
import { VerifyRecord } from '../setup/verify-record.tsx';
import { FindingList } from './finding-list.tsx';
import styles from './health.module.css';
import { type HealthStatus, healthCalls } from './health-calls.ts';
import { TryScanner } from './try-scanner.tsx';
import { usePageFindings } from './use-page-findings.ts';
import { wordFindingWith } from './word-finding.ts';

export const HealthPanel = () => {
  const text = useText();
  const { t } = text;
  const { status, error, isWorking, begin, cancel } = useWork(healthCalls);
  const page = usePageFindings();
  useEffect(() => begin({}), [begin]);
  const again = (): void => {
    page.lookAgain();
    begin({});
  };
  const ofStation: readonly Finding[] = status?.state === 'examined' && !isWorking ? status.findings : [];
  const findings = ofStation.length === 0 ? [] : byGravity([...ofStation, ...page.findings]);
  const word = wordFindingWith(text);
  const save = (): void => {
    const report = healthReport(findings, new Date().toISOString(), word);
    saveText(JSON.stringify(report, undefined, 2), 'srl-bench-report.json', 'application/json');
  };
  useNumberedActs([again, findings.length === 0 ? undefined : save]);
  const refused = status?.state === 'refused' && !isWorking ? status.sentence : undefined;
  return (
    <div className={styles.panel}>
      <section className={styles.box} aria-labelledby="health">
        <div className={styles.head}>
          <h2 id="health">{t('health:title')}</h2>
          <div className={styles.buttons}>
            {isWorking ? <Button onPress={cancel}>{t('health:cancel')}</Button> : null}
            <Button look="primary" number={1} isRunning={isWorking} onPress={again}>
              {t('health:begin')}
            </Button>
          </div>
        </div>
        <p className={styles.soft}>{t('health:text')}</p>
        <div role="status">
          {isWorking ? <p>{progressOf(status, t)}</p> : null}
          {findings.length === 0 ? null : <Summary findings={findings} />}
        </div>
        <AlertLine sentence={error?.sentence ?? refused} />
        <FindingList findings={findings.map(word)} />
      </section>
      <div className={styles.column}>
        <TryScanner />
        <VerifyRecord />
        <section className={styles.box} aria-labelledby="health-report">
          <h2 id="health-report">{t('health:report')}</h2>
          <p>{t('health:reportText')}</p>
          <Button icon="away" number={2} isDisabled={findings.length === 0} onPress={save}>
            {t('health:report')}
          </Button>
        </section>
      </div>
    </div>
  );
};

const progressOf = (status: HealthStatus | undefined, t: ReturnType<typeof useText>['t']): string =>
  status?.state === 'working' && status.of > 0
    ? t('health:looking', { done: status.done, of: status.of })
    : t('health:beginning');

const Summary = ({ findings }: { readonly findings: readonly Finding[] }) => {
  const { t } = useText();
  const { wrong, attention } = countsOf(findings);
  return (
    <p className={styles.sign}>
      <Icon name={wrong > 0 ? 'cross' : attention > 0 ? 'warning' : 'check'} />
      <span>
        {wrong === 0 ? t('health:allGood') : t('health:wrongCount', { count: wrong })}{' '}
        {attention === 0 ? '' : t('health:attentionCount', { count: attention })}
      </span>
    </p>
  );
};
