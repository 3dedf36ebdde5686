/** The lifeline laid out flat, from hook to housing: shows where findings lie, and takes the place of a new one. */
import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import type { Metres } from '../../src/domain/brand.ts';
import { toUnit } from '../../src/domain/length.ts';
import { useText } from '../i18n/text.ts';
import styles from './lifeline-strip.module.css';
import { StripRope } from './strip-rope.tsx';
import { nudged, positionAt, stripTicks } from './strip-scale.ts';

export interface PlacedFinding {
  readonly positionM: number;
  readonly label: string;
}

export interface LifelineStripProps {
  readonly ratedLengthM: Metres;
  /** The place being given; `undefined` while there is none. */
  readonly positionM: Metres | undefined;
  readonly placed: readonly PlacedFinding[];
  onPlace(positionM: Metres): void;
}

export const LifelineStrip = ({ ratedLengthM, positionM, placed, onPlace }: LifelineStripProps) => {
  const { t, lengthText, lengthUnit } = useText();
  const track = useRef<HTMLDivElement>(null);

  const placeAt = (event: PointerEvent<HTMLDivElement>): void => {
    const box = track.current?.getBoundingClientRect();
    if (box === undefined || box.width === 0) return;
    onPlace(positionAt((event.clientX - box.left) / box.width, ratedLengthM, lengthUnit));
  };
  const moveByKey = (event: KeyboardEvent<HTMLDivElement>): void => {
    const next = placeOfKey(event.key, (direction, size) => nudged(positionM, direction, size, ratedLengthM, lengthUnit), ratedLengthM);
    if (next === undefined) return;
    event.preventDefault();
    onPlace(next);
  };

  return (
    <div className={styles.strip}>
      <div className={styles.ends} aria-hidden="true">
        <span>{t('walk:placing.hook')}</span>
        <span>{t('walk:placing.housing')}</span>
      </div>
      <div
        ref={track}
        className={styles.track}
        role="slider"
        tabIndex={0}
        aria-label={t('walk:placing.strip')}
        aria-valuemin={0}
        aria-valuemax={toUnit(ratedLengthM, lengthUnit)}
        aria-valuenow={toUnit(positionM ?? (0 as Metres), lengthUnit)}
        aria-valuetext={positionM === undefined ? t('walk:placing.none') : t('walk:placing.value', { length: lengthText(positionM) })}
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId);
          placeAt(event);
        }}
        onPointerMove={(event) => {
          if (event.buttons > 0) placeAt(event);
        }}
        onKeyDown={moveByKey}
      >
        <StripRope />
        {placed.map((finding, index) => (
          <span
            key={`${index}-${finding.positionM}`}
            className={styles.placed}
            style={{ left: `${(finding.positionM / ratedLengthM) * 100}%` }}
            title={`${finding.label}, ${lengthText(finding.positionM)}`}
          />
        ))}
        {positionM !== undefined && positionM <= ratedLengthM && (
          <span className={styles.pin} style={{ left: `${(positionM / ratedLengthM) * 100}%` }} />
        )}
      </div>
      <div className={styles.scale} aria-hidden="true">
        {stripTicks(ratedLengthM, lengthUnit).map((tick) => (
          <span
            key={tick.fraction}
            className={tick.value === undefined ? styles.minor : styles.major}
            style={{ left: `${tick.fraction * 100}%` }}
          >
            {tick.value === undefined ? null : <b>{lengthText.length > 0 ? numberOf(tick.value) : ''}</b>}
          </span>
        ))}
        <span className={styles.unit}>{lengthUnit}</span>
      </div>
    </div>
  );
};
