/** The lifeline laid out flat, from hook to housing: shows where findings lie, and takes the place of a new one. */
import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import { type Metres, metres } from '../../src/domain/brand.ts';
import { type LengthUnit, toUnit } from '../../src/domain/length.ts';
import { useText } from '../i18n/text.ts';
import styles from './lifeline-strip.module.css';
import { StripRope } from './strip-rope.tsx';
import { nudged, positionAt } from './strip-scale.ts';
import { StripTicks } from './strip-ticks.tsx';

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
  const inPercent = (position: number) => ({ left: `${(position / ratedLengthM) * 100}%` });

  const placeAt = (event: PointerEvent<HTMLDivElement>): void => {
    const box = track.current?.getBoundingClientRect();
    if (box === undefined || box.width === 0) return;
    onPlace(positionAt((event.clientX - box.left) / box.width, ratedLengthM, lengthUnit));
  };
  const moveByKey = (event: KeyboardEvent<HTMLDivElement>): void => {
    const next = placeOfKey(event.key, positionM, ratedLengthM, lengthUnit);
    if (next === undefined) return;
    event.preventDefault();
    onPlace(next);
  };

  return (
    <div className={styles.strip}>
      <div
        ref={track}
        className={styles.track}
        role="slider"
        tabIndex={0}
        aria-label={t('walk:placing.strip')}
        aria-valuemin={0}
        aria-valuemax={toUnit(ratedLengthM, lengthUnit)}
        aria-valuenow={toUnit(positionM ?? metres(0), lengthUnit)}
        aria-valuetext={
          positionM === undefined
            ? t('walk:placing.none')
            : t('walk:placing.value', { length: lengthText(positionM) })
        }
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
        {placed.map((finding) => (
          <span
            key={`${finding.label} ${finding.positionM}`}
            className={styles.placed}
            style={inPercent(finding.positionM)}
            title={`${finding.label}, ${lengthText(finding.positionM)}`}
          />
        ))}
        {positionM !== undefined && positionM <= ratedLengthM && (
          <span className={styles.pin} style={inPercent(positionM)} />
        )}
      </div>
      <StripTicks ratedLengthM={ratedLengthM} />
      <div className={styles.ends} aria-hidden="true">
        <span>{t('walk:placing.hook')}</span>
        <span>{t('walk:placing.housing')}</span>
      </div>
    </div>
  );
};

/** As the slider pattern of the WAI-ARIA Authoring Practices has it: arrows, Page Up and Down, Home, End. */
const placeOfKey = (
  key: string,
  positionM: Metres | undefined,
  ratedLengthM: Metres,
  unit: LengthUnit,
): Metres | undefined => {
  switch (key) {
    case 'ArrowRight':
    case 'ArrowUp':
      return nudged(positionM, 1, 'fine', ratedLengthM, unit);
    case 'ArrowLeft':
    case 'ArrowDown':
      return nudged(positionM, -1, 'fine', ratedLengthM, unit);
    case 'PageUp':
      return nudged(positionM, 1, 'coarse', ratedLengthM, unit);
    case 'PageDown':
      return nudged(positionM, -1, 'coarse', ratedLengthM, unit);
    case 'Home':
      return metres(0);
    case 'End':
      return ratedLengthM;
    default:
      return undefined;
  }
};
