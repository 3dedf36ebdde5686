/** What the marks on the map of a lifeline mean. */

import { classes } from '../../design/classes.ts';
import mapStyles from '../../drawing/lifeline-map.module.css';
import { useText } from '../../i18n/text.ts';
import styles from './lifeline.module.css';

export const MapLegend = () => {
  const { t } = useText();
  return (
    <ul className={styles.legend}>
      <li>
        <svg viewBox="0 0 30 30" aria-hidden="true">
          <path className={classes(mapStyles.finding, mapStyles.removing)} d="M15 3l11 12l-11 12l-11 -12Z" />
        </svg>
        {t('evidence:map.finding')}
      </li>
      <li>
        <svg viewBox="0 0 30 30" aria-hidden="true">
          <circle className={mapStyles.reading} cx="15" cy="15" r="8" />
        </svg>
        {t('evidence:map.reading')}
      </li>
      <li>
        <svg viewBox="0 0 30 30" aria-hidden="true">
          <path className={mapStyles.thin} d="M3 5h24l-12 21Z" />
        </svg>
        {t('evidence:map.thin')}
      </li>
    </ul>
  );
};
