/** One element of the marking: what it says, and whether it can be read. */
import { type MarkingState, markingStates } from '../../../src/domain/marking.ts';
import { Button } from '../../components/button.tsx';
import { Choice } from '../../components/choice.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { classes } from '../../design/classes.ts';
import { useText } from '../../i18n/text.ts';
import type { MarkingLine } from './marking-draft.ts';
import styles from './marking-row.module.css';

export interface MarkingRowProps {
  readonly line: MarkingLine;
  /** The digits answer this line. */
  readonly isMarked: boolean;
  /** Scanned codes that can be taken over as the words. */
  readonly codes: readonly string[];
  /** What a scanned code says where something else stands. */
  readonly otherwise: string | undefined;
  readonly error: string | undefined;
  onText(text: string): void;
  onState(state: MarkingState): void;
}

export const MarkingRow = ({ line, isMarked, codes, otherwise, error, onText, onState }: MarkingRowProps) => {
  const { t } = useText();
  const element = t(`screens:marking.element.${line.element}`);
  const isLost = line.state === 'illegible' || line.state === 'missing';
  const code = codes[0];
  const differs =
    otherwise === undefined ? undefined : t('screens:newDevice.codeDiffers', { text: otherwise });
  return (
    <div className={classes(styles.row, isMarked && styles.marked)}>
      <span className={styles.element}>
        {element}
        {line.fromCode === true && !isLost ? (
          <span className={styles.source}>{t('screens:newDevice.fromCode')}</span>
        ) : null}
      </span>
      <div className={styles.words}>
        <TextInput
          label={t('screens:newDevice.says', { element })}
          isLabelHidden
          value={isLost ? '' : line.text}
          onChange={onText}
          isDisabled={isLost}
          error={error ?? differs}
        />
        {code === undefined || isLost || line.text !== '' ? null : (
          <Button onPress={() => onText(code)}>
            {t('screens:newDevice.useCode', { code: shorten(code) })}
          </Button>
        )}
      </div>
      <Choice<MarkingState>
        label={element}
        isLabelHidden
        isCompact
        value={line.state}
        options={markingStates.map((value) => ({ value, label: t(`screens:marking.state.${value}`) }))}
        onChange={onState}
      />
    </div>
  );
};

const shorten = (text: string): string => (text.length > 16 ? `${text.slice(0, 15)}…` : text);
