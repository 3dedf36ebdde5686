/** The ruler under the lifeline strip. */
import type { Metres } from '../../src/domain/brand.ts';
import { lifelineTicks } from '../../src/domain/lifeline/ticks.ts';
import { useText } from '../i18n/text.ts';
import styles from './lifeline-strip.module.css';

export const StripTicks = ({ ratedLengthM }: { readonly ratedLengthM: Metres }) => {
  const { language, lengthUnit } = useText();
  const numbers = new Intl.NumberFormat(language);
  return (
    <div className={styles.scale} aria-hidden="true">
      {lifelineTicks(ratedLengthM, lengthUnit).map(({ fraction, value }) => (
        <span
          key={fraction}
          className={value === undefined ? styles.minor : styles.major}
          style={{ left: `${fraction * 100}%` }}
        >
          {value === undefined ? null : <b>{value === 0 ? `0 ${lengthUnit}` : numbers.format(value)}</b>}
        </span>
      ))}
    </div>
  );
};
