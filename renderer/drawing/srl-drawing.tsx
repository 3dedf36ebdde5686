/** Our own line drawing of a cable SRL as it hangs at the bench, with one zone lit and named. */
import type { Zone } from '../../src/domain/procedure.ts';
import { useText } from '../i18n/text.ts';
import { AnchorPart } from './anchor-part.tsx';
import { BrakePart } from './brake-part.tsx';
import { callouts, drawingHeight, drawingWidth } from './callouts.ts';
import styles from './drawing.module.css';
import { FastenersPart } from './fasteners-part.tsx';
import { HistoryPart } from './history-part.tsx';
import { HousingPart } from './housing-part.tsx';
import { IndicatorPart } from './indicator-part.tsx';
import { LifelinePart } from './lifeline-part.tsx';
import { LowerHookPart } from './lower-hook-part.tsx';
import { MarkingPart } from './marking-part.tsx';
import { RetractionPart } from './retraction-part.tsx';
import { TerminationPart } from './termination-part.tsx';
import { ThimbleInFront } from './thimble-in-front.tsx';
import { UpperHookPart } from './upper-hook-part.tsx';
import { ZonePart, ZonePartInFront } from './zone-part.tsx';

export interface SrlDrawingProps {
  /** The zone to light; without it the whole drawing stands in one weight. */
  readonly zone?: Zone | undefined;
  readonly facts?: {
    readonly loadIndicatorFitted?: boolean | undefined;
    /** The rated length as it is shown, such as `50 ft`; stands beside the lifeline. */
    readonly ratedLength?: string | undefined;
  };
}

export const SrlDrawing = ({ zone, facts = {} }: SrlDrawingProps) => {
  const { t } = useText();
  const callout = zone === undefined ? undefined : callouts[zone];
  const indicator = facts.loadIndicatorFitted ?? true;
  return (
    <div className={styles.drawing} data-zone={zone ?? 'none'}>
      <svg
        className={styles.picture}
        viewBox={`0 0 ${drawingWidth} ${drawingHeight}`}
        role="img"
        aria-label={t('walk:drawing.label')}
      >
        <AnchorPart />
        <ZonePart zone="upper-hook" lit={zone}>
          <UpperHookPart />
        </ZonePart>
        <ZonePart zone="housing" lit={zone}>
          <HousingPart />
        </ZonePart>
        <ZonePart zone="brake" lit={zone}>
          <BrakePart />
        </ZonePart>
        <ZonePart zone="fasteners" lit={zone}>
          <FastenersPart />
        </ZonePart>
        <ZonePart zone="marking" lit={zone}>
          <MarkingPart />
        </ZonePart>
        <ZonePart zone={zone === 'retraction' ? 'retraction' : 'lifeline'} lit={zone}>
          <LifelinePart />
          {zone === 'retraction' && <RetractionPart />}
        </ZonePart>
        <ZonePart zone="termination" lit={zone}>
          <TerminationPart />
        </ZonePart>
        <ZonePart zone="lower-hook" lit={zone}>
          <LowerHookPart indicator={indicator} />
        </ZonePart>
        <ZonePartInFront zone="termination" lit={zone}>
          <ThimbleInFront />
        </ZonePartInFront>
        {indicator && (
          <ZonePart zone="indicator" lit={zone}>
            <IndicatorPart />
          </ZonePart>
        )}
        {zone === 'history' && (
          <ZonePart zone="history" lit={zone}>
            <HistoryPart />
          </ZonePart>
        )}
        {callout !== undefined && (
          <g className={styles.leader}>
            <path
              d={`M${callout.label[0] + 8} ${callout.label[1]}L${callout.point[0]} ${callout.point[1]}`}
            />
            <circle cx={callout.point[0]} cy={callout.point[1]} r="6" />
          </g>
        )}
      </svg>
      {facts.ratedLength !== undefined && (
        <span className={styles.ratedLength} style={placed([276, 551])}>
          {facts.ratedLength}
        </span>
      )}
      {callout !== undefined && zone !== undefined && (
        <span className={styles.callout} style={placed(callout.label)}>
          {t(`walk:zone.${zone}`)}
        </span>
      )}
    </div>
  );
};

const placed = ([x, y]: readonly [number, number]) => ({
  left: `${(x / drawingWidth) * 100}%`,
  top: `${(y / drawingHeight) * 100}%`,
});
