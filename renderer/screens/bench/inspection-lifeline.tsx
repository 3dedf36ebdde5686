/** What this inspection saw along the lifeline, beside the latest earlier ones; nothing where it saw nothing there. */
import type { InspectionView } from '../../../src/station/views.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { LifelineMap } from '../../drawing/lifeline-map.tsx';
import { useText } from '../../i18n/text.ts';
import { hashOf } from '../../navigation/route.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { MapLegend } from '../lifeline/map-legend.tsx';
import { useHeadingOf } from '../lifeline/use-heading-of.ts';
import styles from './inspection-pictures.module.css';

/** Beside this one. */
const earlierShown = 2;

export const InspectionLifeline = ({ inspection }: { readonly inspection: InspectionView }) => {
  const { t } = useText();
  const { benchId } = inspection.device;
  const { data, error } = useStationQuery('lifeline.show', { benchId });
  const headingOf = useHeadingOf();
  const upToThis = (data?.inspections ?? []).filter(
    (each) =>
      each.inspection === inspection.inspection ||
      (each.state === 'signed' && each.inspection < inspection.inspection),
  );
  const [own] = upToThis;
  if (data === undefined || own === undefined || own.findings.length + own.readings.length === 0)
    return <AlertLine sentence={error?.sentence} />;
  return (
    <section className={styles.section} aria-labelledby="inspection-lifeline">
      <h2 id="inspection-lifeline">{t('evidence:map.short')}</h2>
      <MapLegend />
      <LifelineMap
        ratedLengthM={data.ratedLengthM}
        minimumDiameterMm={data.lifelineMinimumDiameterMm}
        inspections={upToThis.slice(0, 1 + earlierShown)}
        headingOf={headingOf}
      />
      <a className={styles.link} href={hashOf({ screen: 'lifeline', benchId })}>
        {t('evidence:map.all')}
      </a>
    </section>
  );
};
