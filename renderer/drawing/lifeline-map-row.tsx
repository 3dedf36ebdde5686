/** One inspection on the map: its heading, the rope, the findings over it and the readings under it. */

import type { LifelineMapRow as Row } from '../../src/domain/lifeline/map.ts';
import type { PlacedLabel } from '../../src/domain/lifeline/place-labels.ts';
import { classes } from '../design/classes.ts';
import styles from './lifeline-map.module.css';
import { ropeTop, mapSizes as sizes } from './lifeline-map-sizes.ts';

export const LifelineMapRow = ({ row, heading }: { readonly row: Row; readonly heading: string }) => {
  const rope = ropeTop(row);
  const under = rope + sizes.rope;
  const overLane = (lane: number) => rope - sizes.stem - (lane + 1) * sizes.lane;
  const underLane = (lane: number) => under + sizes.stem + lane * sizes.lane;
  return (
    <>
      <text className={styles.heading} x={0} y={sizes.heading - 14}>
        {heading}
      </text>
      {row.clusters.map(({ x, label }) => (
        <Leader key={x} x={x} from={rope} to={overLane(label.lane) + sizes.lane / 2} label={label} />
      ))}
      {row.readings.map(({ x, label, reading }) => (
        <Leader
          key={`${x} ${reading.diameterMm}`}
          x={x}
          from={under}
          to={underLane(label.lane) + sizes.lane / 2}
          label={label}
        />
      ))}
      <Rope y={rope} />
      {row.clusters.map(({ x, findings, label }) => (
        <g key={x}>
          <path
            className={classes(
              styles.finding,
              findings.some(({ effect }) => effect !== 'clean-and-look-again') && styles.removing,
            )}
            d={`M${x} ${rope + 6}l${-sizes.mark / 2} -14l${sizes.mark / 2} -14l${sizes.mark / 2} 14Z`}
          />
          {findings.length > 1 && (
            <text className={styles.count} x={x} y={rope - 3} textAnchor="middle">
              {findings.length}
            </text>
          )}
          <Label y={overLane(label.lane)} label={label} isStrong />
        </g>
      ))}
      {row.readings.map(({ x, label, reading, belowMinimum }) => (
        <g key={`${x} ${reading.diameterMm}`}>
          {belowMinimum ? (
            <path className={styles.thin} d={`M${x - 11} ${under + 2}h22l-11 18Z`} />
          ) : (
            <circle className={styles.reading} cx={x} cy={under + 9} r={6} />
          )}
          <Label y={underLane(label.lane)} label={label} isStrong={belowMinimum} />
        </g>
      ))}
    </>
  );
};

const Rope = ({ y }: { readonly y: number }) => (
  <g className={styles.rope}>
    <rect x={0} y={y} width={sizes.width} height={sizes.rope} rx={sizes.rope / 2} />
    <path
      d={Array.from({ length: sizes.width / 20 - 1 }, (_, index) => {
        const x = (index + 1) * 20;
        return `M${x - 6} ${y + sizes.rope - 2}l10 ${4 - sizes.rope}`;
      }).join('')}
    />
  </g>
);

interface LeaderProps {
  readonly x: number;
  readonly from: number;
  readonly to: number;
  readonly label: PlacedLabel;
}

/** From the mark to its label, which may stand beside it at the ends of the rope. */
const Leader = ({ x, from, to, label }: LeaderProps) => (
  <line
    className={styles.leader}
    x1={x}
    y1={from}
    x2={Math.min(Math.max(x, label.left + sizes.labelPadding), label.left + label.width - sizes.labelPadding)}
    y2={to}
  />
);

const Label = ({
  y,
  label,
  isStrong,
}: {
  readonly y: number;
  readonly label: PlacedLabel;
  readonly isStrong: boolean;
}) => (
  <>
    <rect
      className={styles.plate}
      x={label.left}
      y={y + 2}
      width={label.width}
      height={sizes.lane - 4}
      rx={4}
    />
    <text
      className={isStrong ? styles.strong : styles.label}
      x={label.left + label.width / 2}
      y={y + sizes.lane / 2 + 6}
      textAnchor="middle"
    >
      {label.text}
    </text>
  </>
);
