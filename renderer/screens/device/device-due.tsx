/** What a device is due for, whose rule gave each date, and what decides on it: its type of use and its last revalidation. */

import { useState } from 'react';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { DueDate } from '../../../src/domain/due/due-date.ts';
import type { DeviceCard } from '../../../src/station/views.ts';
import { Button } from '../../components/button.tsx';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import { useProgramWords } from '../../i18n/use-program-words.ts';
import styles from './device-due.module.css';
import { RevalidationDialog } from './revalidation-dialog.tsx';
import { UseDialog } from './use-dialog.tsx';

export const DeviceDue = ({ device }: { readonly device: DeviceCard }) => {
  const { t, dateText, inLanguage } = useText();
  const [asked, setAsked] = useState<'use' | 'revalidation'>();
  const [use] = device.uses;
  const { revalidation } = device;
  return (
    <section className={styles.box} aria-labelledby="device-due">
      <h2 id="device-due">{t('program:due.title')}</h2>
      {device.due.length === 0 ? (
        <p>{t(device.standing === 'new' ? 'program:due.notUsed' : 'program:due.out')}</p>
      ) : (
        <ul className={styles.dates}>
          {device.due.map((due) => (
            <DueLine key={due.what} due={due} isNamed />
          ))}
        </ul>
      )}
      {device.programReasons.length === 0 || device.standing === 'scrapped' ? null : (
        <div className={styles.stop}>
          <span className={styles.sign}>
            <Icon name="stop" />
            {t('program:due.cannotPass')}
          </span>
          {device.programReasons.map(({ key, sentence }) => (
            <span key={key}>{inLanguage(sentence)}</span>
          ))}
        </div>
      )}
      {device.dueByEveryRule.length > device.due.length ? (
        <details>
          <summary className={styles.summary}>{t('program:due.every')}</summary>
          <ul className={styles.dates}>
            {device.dueByEveryRule.map((due) => (
              <DueLine key={`${due.what} ${due.rule} ${due.months} ${due.source?.citation}`} due={due} />
            ))}
          </ul>
        </details>
      ) : null}
      <dl className={styles.facts}>
        <div>
          <dt>{t('program:typeOfUse.title')}</dt>
          <dd>
            {use === undefined
              ? t('program:typeOfUse.none')
              : t('program:typeOfUse.since', {
                  use: t(`program:use.${device.typeOfUse ?? use.typeOfUse}`),
                  from: dateText(use.from),
                  by: use.by,
                })}
          </dd>
        </div>
        <div>
          <dt>{t('program:revalidation.title')}</dt>
          <dd>
            {revalidation === undefined
              ? t('program:revalidation.none')
              : t('program:revalidation.line', {
                  on: dateText(revalidation.revalidatedOn),
                  by: revalidation.revalidatedBy,
                  certificate: revalidation.certificate,
                })}
          </dd>
        </div>
      </dl>
      {device.standing === 'scrapped' ? null : (
        <div className={styles.buttons}>
          <Button onPress={() => setAsked('use')}>{t('program:typeOfUse.set')}</Button>
          <Button onPress={() => setAsked('revalidation')}>{t('program:revalidation.record')}</Button>
        </div>
      )}
      {asked === 'use' ? (
        <UseDialog
          title={t('program:typeOfUse.dialog', { benchId: formatBenchId(device.benchId) })}
          benchIds={[device.benchId]}
          typeOfUse={device.typeOfUse}
          onClose={() => setAsked(undefined)}
        />
      ) : null}
      {asked === 'revalidation' ? (
        <RevalidationDialog device={device} onClose={() => setAsked(undefined)} />
      ) : null}
    </section>
  );
};

interface DueLineProps {
  readonly due: DueDate;
  /** With its source, and large. */
  readonly isNamed?: boolean;
}

const DueLine = ({ due, isNamed = false }: DueLineProps) => {
  const { t, dateText } = useText();
  const words = useProgramWords();
  const { what, on, rule, months, countedFrom, source } = due;
  const by =
    months === undefined || countedFrom === undefined
      ? t('program:due.byTag')
      : t('program:due.by', {
          rule: t(`program:due.rule.${rule}`),
          months: words.months(months),
          from: dateText(countedFrom),
        });
  return (
    <li className={styles.date}>
      <span className={isNamed ? styles.what : undefined}>
        {t(`program:due.what.${what}`)}: {dateText(on)}
      </span>
      <span className={styles.soft}>{by}</span>
      {source === undefined ? null : <span className={styles.soft}>{words.source(source)}</span>}
    </li>
  );
};
