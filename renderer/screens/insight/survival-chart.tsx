/** The share of devices that are left without a removal, day by day, with its confidence band. */
import type { OutputOf } from '../../../src/station/contract.ts';
import { useText } from '../../i18n/text.ts';
import styles from './insight.module.css';
import { usePercent } from './use-percent.ts';

type Survival = OutputOf<'insight.show'>['survival'];

const sizes = { width: 1000, height: 320, left: 80, right: 24, top: 16, bottom: 64 } as const;
const shares = [0, 0.25, 0.5, 0.75, 1] as const;

export const SurvivalChart = ({ survival }: { readonly survival: Survival }) => {
  const { t } = useText();
  const percent = usePercent();
  const { steps, longest, devices } = survival;
  const span = Math.max(longest, 1);
  const x = (time: number): number => (time / span) * sizes.width;
  const y = (share: number): number => (1 - share) * sizes.height;
  const stairs = (value: (step: Survival['steps'][number]) => number): string =>
    steps.map((step) => `H${x(step.time).toFixed(1)}V${y(value(step)).toFixed(1)}`).join('');
  const upper = `M0 0${stairs((step) => step.upper)}H${sizes.width}`;
  const lastLower = steps.at(-1)?.lower ?? 1;
  const lowerBack = steps
    .toReversed()
    .map((step, index, all) => `H${x(step.time).toFixed(1)}V${y(all[index + 1]?.lower ?? 1).toFixed(1)}`)
    .join('');
  return (
    <svg
      className={styles.chart}
      viewBox={`${-sizes.left} ${-sizes.top} ${sizes.width + sizes.left + sizes.right} ${sizes.height + sizes.top + sizes.bottom}`}
      role="img"
      aria-label={t('insight:survival.label', { devices })}
    >
      <path className={styles.band} d={`${upper}V${y(lastLower).toFixed(1)}${lowerBack}H0Z`} />
      <path className={styles.curve} d={`M0 0${stairs((step) => step.survival)}H${sizes.width}`} />
      <path className={styles.axis} d={`M0 0V${sizes.height}H${sizes.width}`} />
      {shares.map((share) => (
        <text key={share} className={styles.label} x={-12} y={y(share) + 7} textAnchor="end">
          {percent(share)}
        </text>
      ))}
      {[0, 0.25, 0.5, 0.75, 1].map((part) => (
        <text
          key={part}
          className={styles.label}
          x={part * sizes.width}
          y={sizes.height + 28}
          textAnchor={part === 1 ? 'end' : 'middle'}
        >
          {t('insight:survival.days', { days: Math.round(part * span) })}
        </text>
      ))}
    </svg>
  );
};
