/** The defects of a check, numbered, each with its picture and what follows from it. */
import { Button } from 'react-aria-components';
import type { Finding } from '../../../src/domain/answer.ts';
import type { ConditionCheck } from '../../../src/domain/procedure.ts';
import { classes } from '../../design/classes.ts';
import { DefectPictogram } from '../../drawing/defect-pictogram.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './defect-choices.module.css';
import { KeyCap } from './key-cap.tsx';

export interface DefectChoicesProps {
  readonly check: ConditionCheck;
  readonly findings: readonly Finding[];
  onChoose(defect: string): void;
}

export const DefectChoices = ({ check, findings, onChoose }: DefectChoicesProps) => {
  const { t, inLanguage } = useText();
  return (
    <ul className={classes(styles.choices, check.defects.length === 1 && styles.single)}>
      {check.defects.map(({ key, label, effect }, index) => {
        const count = findings.filter((finding) => finding.defect === key).length;
        const isChosen = count > 0;
        const follows = t(`walk:picker.effect.${effect}`);
        return (
          <li key={key}>
            <Button
              className={classes(styles.choice, isChosen && styles.chosen)}
              aria-pressed={isChosen}
              onPress={() => onChoose(key)}
            >
              <KeyCap>{index + 1}</KeyCap>
              <span className={styles.words}>
                {inLanguage(label)}
                {count > 1 && <span> × {count}</span>}
                {effect !== 'remove' && <span className={styles.follows}>{follows}</span>}
              </span>
              <DefectPictogram defect={key} />
            </Button>
          </li>
        );
      })}
    </ul>
  );
};
