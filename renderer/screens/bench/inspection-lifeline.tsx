/** What an inspection saw along the lifeline, beside the latest earlier ones. */
import type { OutputOf } from '../../../src/station/contract.ts';
import type { InspectionView } from '../../../src/station/views.ts';
import { LifelineMap } from '../../drawing/lifeline-map.tsx';
import { useText } from '../../i18n/text.ts';
import { hashOf } from '../../navigation/route.ts';
import { MapLegend } from '../lifeline/map-legend.tsx';
import { useHeadingOf } from '../lifeline/use-heading-of.ts';
import styles from './inspection-evidence.module.css';

/** Beside this one. */
const earlierShown = 2;

export interface InspectionLifelineProps {
  readonly lifeline: OutputOf<'lifeline.show'>;
  readonly inspection: InspectionView;
}

export const InspectionLifeline = ({
  lifeline,
  inspection: { inspection, device },
}: InspectionLifelineProps) => {
  const { t } = useText();
  const headingOf = useHeadingOf();
  const upToThis = lifeline.inspections.filter(
    (each) => each.inspection === inspection || (each.state === 'signed' && each.inspection < inspection),
  );
  return (
    <section className={styles.section} aria-labelledby="inspection-lifeline">
      <h2 id="inspection-lifeline">{t('evidence:map.short')}</h2>
      <MapLegend />
      <LifelineMap
        ratedLengthM={lifeline.ratedLengthM}
        minimumDiameterMm={lifeline.lifelineMinimumDiameterMm}
        inspections={upToThis.slice(0, 1 + earlierShown)}
        headingOf={headingOf}
      />
      <a className={styles.link} href={hashOf({ screen: 'lifeline', benchId: device.benchId })}>
        {t('evidence:map.all')}
      </a>
    </section>
  );
};
