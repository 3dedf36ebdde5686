/** One signed inspection of the records: its verdict, every answer, and its report. */
import { useState } from 'react';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import { Button } from '../../components/button.tsx';
import { StationError } from '../../components/station-error.tsx';
import { classes } from '../../design/classes.ts';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { BlindNote } from '../bench/blind-note.tsx';
import { InspectionEvidence } from '../bench/inspection-evidence.tsx';
import { useBareAnswerWords } from '../bench/use-answer-words.ts';
import { CorrectionList } from '../corrections/correction-list.tsx';
import styles from './records.module.css';
import { ReportDialog } from './report-dialog.tsx';
import { VerdictMark } from './verdict-mark.tsx';

export const RecordScreen = ({ inspection: number }: { readonly inspection: number }) => {
  const { t, dateText, inLanguage } = useText();
  const answerWords = useBareAnswerWords();
  const [isReporting, setReporting] = useState(false);
  const shown = useStationQuery('inspection.show', { inspection: number });
  const procedure = useStationQuery('procedure.show', { inspection: number });
  const error = shown.error ?? procedure.error;
  if (error !== undefined) return <StationError error={error} />;
  if (shown.data === undefined || procedure.data === undefined) return <p>{t('screens:app.loading')}</p>;
  const { inspection } = shown.data;
  const { checks } = procedure.data.procedure;
  const { device, verdict, signed, amendments } = inspection;
  const isCorrected = (key: string): boolean =>
    amendments.some(({ correction }) => correction.field === 'answer' && correction.check === key);
  const reasons = verdict.kind === 'pass' ? [] : verdict.reasons;
  return (
    <div className={styles.screen}>
      <div className={styles.head}>
        <h1>{t('records:inspection', { inspection: number })}</h1>
        <div className={styles.buttons}>
          <Button onPress={() => navigate({ screen: 'records' })}>{t('records:back')}</Button>
          <Button onPress={() => navigate({ screen: 'device', benchId: device.benchId })}>
            {t('records:deviceCard')}
          </Button>
          {inspection.state === 'open' ? null : (
            <Button look="primary" icon="register" onPress={() => setReporting(true)}>
              {t('records:report.make')}
            </Button>
          )}
        </div>
      </div>
      <section className={styles.box} aria-labelledby="record-verdict">
        <h2 id="record-verdict" className={styles.verdict}>
          <VerdictMark verdict={verdict.kind} reasons={reasons.length} />
        </h2>
        <p>
          <span className={styles.benchId}>{formatBenchId(device.benchId)}</span> {device.manufacturer}{' '}
          {device.model}
          {device.serial === '' ? '' : `, ${device.serial}`}
        </p>
        <p>
          {signed === undefined
            ? t('records:notSigned')
            : t('records:signed', { date: dateText(signed.on), name: signed.by })}
          {signed?.dueOn === undefined ? '' : ` ${t('records:due', { date: dateText(signed.dueOn) })}`}
        </p>
        <ul className={styles.reasons}>
          {reasons.map(({ key, positionM, sentence }) => (
            <li key={`${key} ${positionM ?? ''} ${sentence.en}`}>{inLanguage(sentence)}</li>
          ))}
        </ul>
        <BlindNote inspection={inspection} />
        <InspectionEvidence inspection={inspection} checks={checks} />
      </section>
      {amendments.length === 0 ? null : (
        <section className={styles.box} aria-labelledby="record-corrections">
          <h2 id="record-corrections">{t('corrections:made')}</h2>
          <CorrectionList amendments={amendments} />
        </section>
      )}
      <table className={styles.table} aria-label={t('records:answers')}>
        <thead>
          <tr>
            <th scope="col">{t('records:column.check')}</th>
            <th scope="col">{t('records:column.answer')}</th>
            <th scope="col">{t('records:column.by')}</th>
          </tr>
        </thead>
        <tbody>
          {inspection.checks.map((key) => {
            const check = checks.find((each) => each.key === key);
            const answered = inspection.answers[key];
            const isFound =
              answered?.answer.kind === 'defects' ||
              reasons.some((reason) => reason.key.startsWith(`${key}.`));
            return (
              <tr key={key}>
                <td>{check === undefined ? key : inLanguage(check.title)}</td>
                <td className={classes(isFound && styles.found)}>
                  {check === undefined || answered === undefined ? '–' : answerWords(check, answered.answer)}
                  {isCorrected(key) ? <div className={styles.corrected}>{t('records:corrected')}</div> : null}
                </td>
                <td>{answered?.by ?? ''}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
      {isReporting ? (
        <ReportDialog
          title={t('records:report.inspection', { inspection: number })}
          of={{ kind: 'inspection', inspection: number }}
          onClose={() => setReporting(false)}
        />
      ) : null}
    </div>
  );
};
