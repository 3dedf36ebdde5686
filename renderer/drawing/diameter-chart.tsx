/** The least diameter of a lifeline over its inspections, with the band of further readings and the manufacturer's minimum. */
import { placeLabels } from '../../src/domain/lifeline/place-labels.ts';
import type { DiameterTrend } from '../../src/domain/lifeline/trend.ts';
import { useText } from '../i18n/text.ts';
import { chartAxes } from './diameter-axes.ts';
import styles from './lifeline-map.module.css';
import { measureText } from './measure-text.ts';

export interface DiameterChartProps {
  readonly trend: Extract<DiameterTrend, { readonly kind: 'trend' }>;
  readonly minimumMm: number;
}

const sizes = { width: 1000, height: 300, left: 96, right: 18, top: 18, lane: 28, text: 18 } as const;

export const DiameterChart = ({ trend, minimumMm }: DiameterChartProps) => {
  const { t, dateText, diameterText, diameterUnit } = useText();
  const axes = chartAxes(trend, minimumMm, diameterUnit, sizes.width, sizes.height);
  const labels = placeLabels(
    trend.points.map(({ on, diameterMm }) => ({
      x: axes.x(on),
      text: `${diameterText(diameterMm)}, ${dateText(on)}`,
    })),
    { width: sizes.width, gap: 12, measure: (text) => measureText(text, sizes.text) },
  );
  const lanes = labels.reduce((most, { lane }) => Math.max(most, lane + 1), 0);
  const line = (values: readonly (readonly [number, number])[]) =>
    values.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('');
  const upper = trend.band.map(({ on, highMm }) => [axes.x(on), axes.clippedY(highMm)] as const);
  const lower = trend.band.map(({ on, lowMm }) => [axes.x(on), axes.clippedY(lowMm)] as const);
  return (
    <svg
      className={styles.map}
      viewBox={`${-sizes.left} ${-sizes.top} ${sizes.width + sizes.left + sizes.right} ${sizes.height + sizes.top + 24 + lanes * sizes.lane}`}
      role="img"
      aria-label={`${t('evidence:trend.label')}. ${labels.map(({ text }) => text).join('. ')}. ${t('evidence:trend.minimum', { minimum: diameterText(minimumMm) })}`}
    >
      <path className={styles.band} d={`${line([...upper, ...lower.toReversed()])}Z`} />
      <path
        className={styles.fit}
        d={line(trend.band.map(({ on, fittedMm }) => [axes.x(on), axes.clippedY(fittedMm)] as const))}
      />
      <path className={styles.minimum} d={`M0 ${axes.y(minimumMm)}H${sizes.width}`} />
      <path className={styles.axis} d={`M0 0V${sizes.height}H${sizes.width}`} />
      {axes.ticks.map((value) => (
        <g key={value}>
          <path className={styles.axis} d={`M-8 ${axes.y(value)}h8`} />
          <text className={styles.label} x={-14} y={axes.y(value) + 6} textAnchor="end">
            {diameterText(value)}
          </text>
        </g>
      ))}
      <text className={styles.strong} x={8} y={axes.y(minimumMm) + 24}>
        {t('evidence:trend.minimum', { minimum: diameterText(minimumMm) })}
      </text>
      {trend.points.map(({ inspection, on, diameterMm }, index) => (
        <g key={inspection}>
          <circle className={styles.point} cx={axes.x(on)} cy={axes.y(diameterMm)} r={7} />
          <path className={styles.axis} d={`M${axes.x(on)} ${sizes.height}v8`} />
          <text
            className={styles.label}
            x={(labels[index]?.left ?? 0) + (labels[index]?.width ?? 0) / 2}
            y={sizes.height + 32 + (labels[index]?.lane ?? 0) * sizes.lane}
            textAnchor="middle"
          >
            {labels[index]?.text}
          </text>
        </g>
      ))}
    </svg>
  );
};
