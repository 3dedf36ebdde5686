/** Step two of registering: each element of the manufacturer's marking, answered by itself. */
import { useState } from 'react';
import { type MarkingElement, type MarkingState, markingStates } from '../../../src/domain/marking.ts';
import type { Identification } from '../../../src/domain/marking-data.ts';
import type { ModelSheet } from '../../../src/domain/model-sheet.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { classes } from '../../design/classes.ts';
import { useText } from '../../i18n/text.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { firstOpen, isComplete, type MarkingLine, otherwiseByCode, wordsMissing } from './marking-draft.ts';
import { MarkingRow } from './marking-row.tsx';
import styles from './new-device.module.css';

export interface MarkingStepProps {
  readonly sheet: ModelSheet;
  readonly lines: readonly MarkingLine[];
  /** Codes that were scanned off the device, one of which may be its serial number. */
  readonly codes: readonly string[];
  /** What the scanned codes say of the device. */
  readonly identifications: readonly Identification[];
  onChange(lines: readonly MarkingLine[]): void;
  onBack(): void;
  onNext(): void;
}

export const MarkingStep = (props: MarkingStepProps) => {
  const { sheet, lines, codes, identifications, onChange, onBack, onNext } = props;
  const { t, lengthText } = useText();
  const [wasTried, setTried] = useState(false);
  const [again, setAgain] = useState<MarkingElement>();
  const marked = again ?? firstOpen(lines);
  const open = lines.filter((line) => line.state === undefined).length;

  const change = (element: MarkingElement, part: Partial<MarkingLine>): void =>
    onChange(lines.map((line) => (line.element === element ? { ...line, ...part } : line)));
  const answer = (element: MarkingElement, state: MarkingState): void => {
    setAgain(undefined);
    change(element, { state });
  };
  const next = (): void => {
    setTried(true);
    if (isComplete(lines)) onNext();
  };
  const stepBack = (): void => {
    const at = lines.findIndex((line) => line.element === marked);
    const before = lines[(at < 0 ? lines.length : at) - 1];
    if (before === undefined) onBack();
    else setAgain(before.element);
  };

  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command') return false;
    const state = markingStates[Number(meaning.command) - 1];
    if (state !== undefined && marked !== undefined) answer(marked, state);
    else if (meaning.command === 'back') stepBack();
    else if (meaning.command === 'next' || meaning.command === 'confirm') next();
    else return false;
    return true;
  });

  const isLosing = lines.some((line) => line.state === 'illegible' || line.state === 'missing');
  const problem = wasTried && open > 0 ? t('screens:newDevice.open', { count: open }) : undefined;
  return (
    <div className={styles.step}>
      <div className={styles.bar}>
        <div className={styles.grow}>
          {problem === undefined ? (
            <p className={classes(isLosing && styles.losing)}>
              <strong>
                {sheet.manufacturer} {sheet.model}, {lengthText(sheet.ratedLengthM)}.
              </strong>{' '}
              {t(isLosing ? 'screens:newDevice.removeWarning' : 'screens:newDevice.markingHint')}
            </p>
          ) : null}
          <AlertLine sentence={problem} />
        </div>
        <Button onPress={onBack}>{t('screens:newDevice.back')}</Button>
        <Button look="primary" icon="forward" onPress={next}>
          {t('screens:newDevice.next')}
        </Button>
      </div>
      <div className={styles.lines}>
        {lines.map((line) => (
          <MarkingRow
            key={line.element}
            line={line}
            isMarked={line.element === marked}
            codes={line.element === 'serialNumber' ? codes : []}
            otherwise={otherwiseByCode(line, identifications)}
            error={wasTried && wordsMissing(line) ? t('screens:form.needed') : undefined}
            onText={(text) => change(line.element, { text, fromCode: false })}
            onState={(state) => answer(line.element, state)}
          />
        ))}
      </div>
    </div>
  );
};
