/** Takes readings of the diameter: the place touched, typed or scanned, then the diameter there, and what is still to measure. */
import type { DiameterReading } from '../../../src/domain/answer.ts';
import { type Metres, metres } from '../../../src/domain/brand.ts';
import type { CommandName } from '../../../src/domain/command-symbol.ts';
import { parseLength } from '../../../src/domain/length.ts';
import { type LifelineFacts, thirdOf } from '../../../src/domain/lifeline/diameter-answer.ts';
import { LifelineStrip } from '../../drawing/lifeline-strip.tsx';
import { nudged } from '../../drawing/strip-scale.ts';
import { useText } from '../../i18n/text.ts';
import { useFocusWithin } from '../../navigation/use-focus-within.ts';
import type { DraftInput } from './answer-draft.ts';
import type { DiameterDraft } from './diameter-draft.ts';
import styles from './diameter-entry.module.css';
import { DraftActions } from './draft-actions.tsx';
import { Keypad } from './keypad.tsx';
import { NumberEntry } from './number-entry.tsx';
import { ReadingList } from './reading-list.tsx';

export interface DiameterEntryProps {
  readonly draft: DiameterDraft;
  readonly facts: LifelineFacts;
  readonly isSending: boolean;
  onInput(input: DraftInput): void;
  onCommand(command: CommandName): void;
}

export const DiameterEntry = ({ draft, facts, isSending, onInput, onCommand }: DiameterEntryProps) => {
  const { t, lengthText, lengthUnit, diameterText, diameterUnit } = useText();
  const part = useFocusWithin<HTMLDivElement>('input');
  const { readings, field } = draft;
  const ratedLengthM = metres(facts.ratedLengthM);
  const positionM = parseLength(draft.position, lengthUnit);
  const place = (next: Metres) => onInput({ kind: 'place', positionM: next });
  const confirm = () => onInput({ kind: 'confirm' });
  const wordsOf = (reading: DiameterReading) =>
    t('evidence:diameter.reading', {
      diameter: diameterText(reading.diameterMm),
      length: lengthText(reading.positionM),
    });
  const minimum = facts.lifelineMinimumDiameterMm;
  const open = ([0, 1, 2] as const).filter(
    (third) => !readings.some((reading) => thirdOf(reading.positionM, facts) === third),
  );
  const done =
    readings.length === 0
      ? t('evidence:diameter.none')
      : t('evidence:diameter.done', { count: readings.length });
  return (
    <section ref={part} className={styles.readings}>
      <p className={styles.title}>
        {field === 'position'
          ? t('evidence:diameter.where')
          : t('evidence:diameter.how', { length: lengthText(positionM ?? 0) })}{' '}
        <span className={styles.hint}>
          {t(field === 'position' ? 'evidence:diameter.whereHint' : 'evidence:diameter.howHint')}
        </span>
      </p>
      <p className={styles.hint}>
        {t('evidence:diameter.nominal', { nominal: diameterText(facts.lifelineDiameterMm) })}{' '}
        {minimum === undefined
          ? t('evidence:diameter.noMinimum')
          : t('evidence:diameter.minimum', { minimum: diameterText(minimum) })}{' '}
        {open.length > 0 && minimum !== undefined && (
          <strong>
            {t('evidence:diameter.stillTo', {
              places: open.map((third) => t(`evidence:diameter.third.${third}`)).join(', '),
            })}
          </strong>
        )}
      </p>
      {field === 'position' && (
        <LifelineStrip
          ratedLengthM={ratedLengthM}
          positionM={positionM}
          placed={readings.map((reading) => ({
            positionM: reading.positionM,
            label: diameterText(reading.diameterMm),
          }))}
          onPlace={place}
        />
      )}
      <ReadingList
        readings={readings}
        wordsOf={wordsOf}
        onDrop={(finding) => onInput({ kind: 'drop', finding })}
      />
      <div className={styles.entry}>
        <div className={styles.number}>
          <NumberEntry
            label={
              field === 'position'
                ? t('evidence:diameter.position', { unit: lengthUnit })
                : t('evidence:diameter.diameter')
            }
            unit={field === 'position' ? lengthUnit : diameterUnit}
            typed={draft[field]}
            onType={(text) => onInput({ kind: 'typed', text })}
            onConfirm={confirm}
            onNudge={(direction) =>
              field === 'position' && place(nudged(positionM, direction, 'fine', ratedLengthM, lengthUnit))
            }
          />
          <DraftActions
            confirm={
              field === 'diameter'
                ? t('evidence:diameter.keep')
                : draft.position === ''
                  ? done
                  : t('evidence:diameter.placeIt')
            }
            isDisabled={isSending}
            onConfirm={confirm}
            onCancel={() => onInput({ kind: 'cancel' })}
          />
        </div>
        {field === 'diameter' && <Keypad shape="calculator" onCommand={onCommand} />}
      </div>
    </section>
  );
};
