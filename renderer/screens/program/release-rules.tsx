/** What must exist before a removed device comes back, reason by reason: the trade's, and what the program asks for besides. */
import type { Program } from '../../../src/domain/program.ts';
import { useText } from '../../i18n/text.ts';
import styles from './program.module.css';
import type { ReleaseOfTrade } from './release-draft.ts';
import { useReleaseWords } from './use-release-words.ts';

export interface ReleaseRulesProps {
  readonly program: Program;
  readonly ofTrade: ReleaseOfTrade;
}

export const ReleaseRules = ({ program, ofTrade }: ReleaseRulesProps) => {
  const { t } = useText();
  const words = useReleaseWords(ofTrade);
  const own = program.release ?? [];
  return (
    <>
      <p className={styles.soft}>{t('program:release.hint')}</p>
      <dl className={styles.facts}>
        {own.map((rule) => (
          <div key={rule.for}>
            <dt>{words.ruleName(rule.for)}</dt>
            <dd>{words.asks(rule)}</dd>
          </div>
        ))}
        {ofTrade.rules
          .filter(({ key }) => own.every((rule) => rule.for !== key))
          .map(({ key, needs }) => (
            <div key={key}>
              <dt>{words.ruleName(key)}</dt>
              <dd>{words.needs(needs)}</dd>
            </div>
          ))}
      </dl>
    </>
  );
};
