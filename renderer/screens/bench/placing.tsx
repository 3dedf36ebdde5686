/** Gives a finding its place on the lifeline: touched on the strip, moved by arrow keys, typed, or scanned digit by digit. */
import type { Finding } from '../../../src/domain/answer.ts';
import type { Metres } from '../../../src/domain/brand.ts';
import { parseLength } from '../../../src/domain/length.ts';
import type { ConditionCheck } from '../../../src/domain/procedure.ts';
import { LifelineStrip } from '../../drawing/lifeline-strip.tsx';
import { nudged } from '../../drawing/strip-scale.ts';
import { useText } from '../../i18n/text.ts';
import { useFocusWithin } from '../../navigation/use-focus-within.ts';
import type { DraftInput } from './answer-draft.ts';
import { DraftActions } from './draft-actions.tsx';
import { NumberEntry } from './number-entry.tsx';
import styles from './placing.module.css';
import { useFindingWords } from './use-answer-words.ts';

export interface PlacingProps {
  readonly check: ConditionCheck;
  readonly findings: readonly Finding[];
  readonly placing: { readonly defect: string; readonly typed: string };
  readonly ratedLengthM: Metres;
  onInput(input: DraftInput): void;
}

export const Placing = ({ check, findings, placing, ratedLengthM, onInput }: PlacingProps) => {
  const { t, lengthUnit } = useText();
  const words = useFindingWords();
  const part = useFocusWithin<HTMLDivElement>('input');
  const positionM = parseLength(placing.typed, lengthUnit);
  const place = (next: Metres) => onInput({ kind: 'place', positionM: next });
  return (
    <div ref={part} className={styles.placing}>
      <p className={styles.title}>
        {words(check, { defect: placing.defect })}: {t('walk:placing.title')}{' '}
        <span className={styles.hint}>{t('walk:placing.hint')}</span>
      </p>
      <LifelineStrip
        ratedLengthM={ratedLengthM}
        positionM={positionM}
        placed={findings.flatMap((finding) =>
          finding.positionM === undefined
            ? []
            : [{ positionM: finding.positionM, label: words(check, { defect: finding.defect }) }],
        )}
        onPlace={place}
      />
      <div className={styles.entry}>
        <NumberEntry
          label={t('walk:placing.input', { unit: lengthUnit })}
          typed={placing.typed}
          onType={(text) => onInput({ kind: 'typed', text })}
          onConfirm={() => onInput({ kind: 'confirm' })}
          onNudge={(direction) => place(nudged(positionM, direction, 'fine', ratedLengthM, lengthUnit))}
        />
        <div>
          <DraftActions
            confirm={t('walk:placing.confirm')}
            isDisabled={false}
            onConfirm={() => onInput({ kind: 'confirm' })}
            onCancel={() => onInput({ kind: 'cancel' })}
          />
        </div>
      </div>
    </div>
  );
};
