/** A small drawing of the test pattern, with a letter at each place that is read off it. */
import { useText } from '../../i18n/text.ts';
import { type ReadingBy, readingMarks } from './offset-draft.ts';
import styles from './printers.module.css';

export interface PatternDrawingProps {
  readonly stock: { readonly widthMm: number; readonly heightMm: number };
  /** What is read off it; nothing is marked where that is open. */
  readonly by: ReadingBy | undefined;
}

/** Drawn in units of which the longer side has 200, so that letters are as large on every stock. */
const longest = 200;
const margin = 26;
const ruler = 14;
const tick = 10;

export const PatternDrawing = ({ stock, by }: PatternDrawingProps) => {
  const { t } = useText();
  const scale = longest / Math.max(stock.widthMm, stock.heightMm);
  const [width, height] = [stock.widthMm * scale, stock.heightMm * scale];
  const [x, y] = [width / 2, height / 2];
  const ticks = (end: number): readonly number[] =>
    Array.from({ length: Math.floor(end / tick) + 1 }, (_, index) => index * tick);
  return (
    <svg
      className={styles.pattern}
      role="img"
      aria-label={t('screens:printers.picture')}
      viewBox={`${-margin} ${-margin} ${width + 2 * margin} ${height + 2 * margin}`}
    >
      <rect className={styles.stock} width={width} height={height} />
      <path
        d={`M5 5H${width - 5}V${height - 5}H5Z M${x - 10} ${y}h20 M${x} ${y - 10}v20 M0 ${ruler}H${width} M${ruler} 0V${height}${ticks(
          width,
        )
          .map((at) => `M${at} ${ruler}v5`)
          .join('')}${ticks(height)
          .map((at) => `M${ruler} ${at}h5`)
          .join('')}`}
      />
      {by === 'rulers' && (
        <g className={styles.marks}>
          <Mark at={[-13, ruler]} letter={readingMarks.leftMm} />
          <Mark at={[width + 13, ruler]} letter={readingMarks.rightMm} />
          <Mark at={[ruler, -13]} letter={readingMarks.topMm} />
          <Mark at={[ruler, height + 13]} letter={readingMarks.bottomMm} />
        </g>
      )}
      {by === 'cross' && (
        <g className={styles.marks}>
          <path className={styles.distance} d={`M0 ${y}H${x}M${x} 0V${y}`} />
          <Mark at={[x / 2 + 8, y - 12]} letter={readingMarks.fromLeftMm} />
          <Mark at={[x + 13, y / 2 + 6]} letter={readingMarks.fromTopMm} />
        </g>
      )}
    </svg>
  );
};

const Mark = ({
  at: [x, y],
  letter,
}: {
  readonly at: readonly [number, number];
  readonly letter: string;
}) => (
  <text x={x} y={y} dy="0.36em" textAnchor="middle">
    {letter}
  </text>
);
