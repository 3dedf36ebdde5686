/** How many devices of one length the depot needs, alike in every month or month by month, and what a new one costs. */
import { type FormEvent, useState } from 'react';
import { metres } from '../../../src/domain/brand.ts';
import type { LengthPlan } from '../../../src/domain/held/returns-basis.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { CheckBox } from '../../components/check-box.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { DialogActions } from '../../components/dialog-actions.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { months, useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import { wholeNumber } from '../program/program-draft.ts';
import { type LengthDraft, lengthDraftOf, lengthFaults, lengthPlanOf } from './length-draft.ts';
import styles from './returns-plan.module.css';

export interface LengthDialogProps {
  readonly lengthM: number;
  /** Now. */
  readonly inService: number;
  readonly plan: LengthPlan | undefined;
  onClose(): void;
}

export const LengthDialog = ({ lengthM, inService, plan, onClose }: LengthDialogProps) => {
  const { t, lengthText } = useText();
  const [draft, setDraft] = useState<LengthDraft>(() => lengthDraftOf(plan));
  const [wasTried, setTried] = useState(false);
  const record = useStationCommand('returns-basis.record');
  const faults = lengthFaults(draft);
  const change = (changed: Partial<LengthDraft>): void => setDraft({ ...draft, ...changed });
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setTried(true);
    if (faults.size > 0) return;
    const result = await record.run({
      change: { what: 'length', ...lengthPlanOf(draft, metres(lengthM)) },
    });
    if (result.ok) onClose();
  };
  const fault = (name: Parameters<typeof faults.has>[0], words: string): string | undefined =>
    wasTried && faults.has(name) ? words : undefined;
  return (
    <Dialog title={t('plan:form.lengthTitle', { length: lengthText(lengthM) })} isWide onClose={onClose}>
      <form className={styles.form} onSubmit={(event) => void submit(event)}>
        <p>{t('plan:form.neededText', { count: inService })}</p>
        <CheckBox
          isSelected={draft.byMonth}
          onChange={(byMonth) =>
            change({
              byMonth,
              ...(byMonth && draft.monthly.every((each) => each === '')
                ? { monthly: months.map(() => draft.always) }
                : {}),
            })
          }
        >
          {t('plan:form.byMonth')}
        </CheckBox>
        {draft.byMonth ? (
          <div className={styles.months}>
            {months.map((month, index) => (
              <TextInput
                key={month}
                label={t(`screens:month.${month}`)}
                inputMode="numeric"
                value={draft.monthly[index] ?? ''}
                onChange={(value) =>
                  change({ monthly: draft.monthly.map((each, at) => (at === index ? value : each)) })
                }
                error={
                  wholeNumber(draft.monthly[index] ?? '', 0, 9999) === undefined
                    ? fault('needed', t('plan:form.numberFault'))
                    : undefined
                }
              />
            ))}
          </div>
        ) : (
          <TextInput
            label={t('plan:form.always')}
            inputMode="numeric"
            value={draft.always}
            onChange={(always) => change({ always })}
            error={fault('needed', t('plan:form.numberFault'))}
            autoFocus
          />
        )}
        <div className={styles.three}>
          <TextInput
            label={t('plan:form.price')}
            inputMode="decimal"
            value={draft.price}
            onChange={(price) => change({ price })}
            error={fault('price', t('plan:form.amountFault'))}
          />
          <TextInput
            label={t('plan:form.leadTimeDays')}
            inputMode="numeric"
            value={draft.leadTimeDays}
            onChange={(leadTimeDays) => change({ leadTimeDays })}
            error={fault('leadTimeDays', t('plan:form.daysFault'))}
          />
          <TextInput
            label={t('plan:form.lifeYears')}
            hint={t('plan:form.lifeYearsHint')}
            inputMode="numeric"
            value={draft.lifeYears}
            onChange={(lifeYears) => change({ lifeYears })}
            error={fault('lifeYears', t('plan:form.yearsFault'))}
          />
        </div>
        <AlertLine sentence={record.error?.sentence} />
        <DialogActions isRunning={record.isRunning} onCancel={onClose} />
      </form>
    </Dialog>
  );
};
