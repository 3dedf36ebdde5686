/** What a manufacturer asks besides the price of each repair: the cost of a shipment, price breaks, how long it takes. */
import { type FormEvent, useState } from 'react';
import type { MakerTerms } from '../../../src/domain/held/returns-basis.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { DialogActions } from '../../components/dialog-actions.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import { wholeNumber } from '../program/program-draft.ts';
import { amountOf, textOf } from './amounts.ts';
import styles from './returns-plan.module.css';

export interface MakerDialogProps {
  readonly manufacturer: string;
  readonly terms: MakerTerms | undefined;
  onClose(): void;
}

interface BreakDraft {
  /** Tells it from the others of the draft. */
  readonly id: number;
  readonly from: string;
  readonly percentOff: string;
}

const mostBreaks = 5;

/** A line that is empty is no price break. */
const isEmpty = ({ from, percentOff }: BreakDraft): boolean => from.trim() === '' && percentOff.trim() === '';

const breakOf = ({ from, percentOff }: BreakDraft): MakerTerms['priceBreaks'][number] | undefined => {
  const count = wholeNumber(from, 2, 1000);
  const percent = amountOf(percentOff);
  return count === undefined || percent === undefined || percent <= 0 || percent > 100
    ? undefined
    : { from: count, percentOff: percent };
};

export const MakerDialog = ({ manufacturer, terms, onClose }: MakerDialogProps) => {
  const { t } = useText();
  const [cost, setCost] = useState(textOf(terms?.shipmentCost));
  const [days, setDays] = useState(textOf(terms?.turnaroundDays));
  const [breaks, setBreaks] = useState<readonly BreakDraft[]>(() =>
    (terms?.priceBreaks ?? []).map(({ from, percentOff }, id) => ({
      id,
      from: String(from),
      percentOff: String(percentOff),
    })),
  );
  const [wasTried, setTried] = useState(false);
  const record = useStationCommand('returns-basis.record');
  const shipmentCost = amountOf(cost);
  const turnaroundDays = wholeNumber(days, 0, 1000);
  const areDaysWrong = days.trim() !== '' && turnaroundDays === undefined;
  const written = breaks.filter((each) => !isEmpty(each));
  const priceBreaks = written.map(breakOf).filter((each) => each !== undefined);
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setTried(true);
    if (shipmentCost === undefined || areDaysWrong || priceBreaks.length < written.length) return;
    const result = await record.run({
      change: {
        what: 'maker',
        manufacturer,
        shipmentCost,
        priceBreaks,
        ...(turnaroundDays === undefined ? {} : { turnaroundDays }),
      },
    });
    if (result.ok) onClose();
  };
  const change = (id: number, changed: Partial<BreakDraft>): void =>
    setBreaks(breaks.map((each) => (each.id === id ? { ...each, ...changed } : each)));
  const fault = (isWrong: boolean, words: string): string | undefined =>
    wasTried && isWrong ? words : undefined;
  return (
    <Dialog title={t('plan:form.makerTitle', { manufacturer })} isWide onClose={onClose}>
      <form className={styles.form} onSubmit={(event) => void submit(event)}>
        <div className={styles.pair}>
          <TextInput
            label={t('plan:form.shipmentCost')}
            hint={t('plan:form.shipmentCostHint')}
            inputMode="decimal"
            value={cost}
            onChange={setCost}
            error={fault(shipmentCost === undefined, t('plan:form.amountFault'))}
            autoFocus
          />
          <TextInput
            label={t('plan:form.turnaroundDays')}
            hint={t('plan:form.turnaroundDaysHint')}
            inputMode="numeric"
            value={days}
            onChange={setDays}
            error={fault(areDaysWrong, t('plan:form.daysFault'))}
          />
        </div>
        <fieldset className={styles.breaks}>
          <legend>{t('plan:form.breaks')}</legend>
          {breaks.map((each, index) => (
            <div key={each.id} className={styles.break}>
              <TextInput
                label={t('plan:form.from', { number: index + 1 })}
                inputMode="numeric"
                value={each.from}
                onChange={(from) => change(each.id, { from })}
                error={fault(!isEmpty(each) && breakOf(each) === undefined, t('plan:form.breakFault'))}
              />
              <TextInput
                label={t('plan:form.percentOff', { number: index + 1 })}
                inputMode="decimal"
                value={each.percentOff}
                onChange={(percentOff) => change(each.id, { percentOff })}
              />
              <Button
                icon="cross"
                label={t('plan:form.removeBreak', { number: index + 1 })}
                onPress={() => setBreaks(breaks.filter(({ id }) => id !== each.id))}
              >
                {t('plan:form.remove')}
              </Button>
            </div>
          ))}
          {breaks.length >= mostBreaks ? null : (
            <Button
              icon="plus"
              onPress={() =>
                setBreaks([
                  ...breaks,
                  { id: Math.max(-1, ...breaks.map(({ id }) => id)) + 1, from: '', percentOff: '' },
                ])
              }
            >
              {t('plan:form.addBreak')}
            </Button>
          )}
        </fieldset>
        <AlertLine sentence={record.error?.sentence} />
        <DialogActions isRunning={record.isRunning} onCancel={onClose} />
      </form>
    </Dialog>
  );
};
