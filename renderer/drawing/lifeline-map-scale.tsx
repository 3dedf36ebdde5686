/** The scale under the map of a lifeline, from the hook to the housing. */
import type { LifelineMap } from '../../src/domain/lifeline/map.ts';
import { useText } from '../i18n/text.ts';
import styles from './lifeline-map.module.css';
import { mapSizes as sizes } from './lifeline-map-sizes.ts';

export const LifelineMapScale = ({ map }: { readonly map: LifelineMap }) => {
  const { t, language, lengthUnit } = useText();
  const numbers = new Intl.NumberFormat(language);
  return (
    <>
      <path className={styles.axis} d={`M0 0H${map.width}`} />
      {map.ticks.map(({ fraction, value }) => {
        const x = fraction * map.width;
        return (
          <g key={fraction}>
            <path className={styles.axis} d={`M${x} 0v${value === undefined ? 5 : 10}`} />
            {value === undefined ? null : (
              <text
                className={styles.label}
                x={x}
                y={30}
                textAnchor={x === 0 ? 'start' : x > map.width - 20 ? 'end' : 'middle'}
              >
                {value === 0 ? `0 ${lengthUnit}` : numbers.format(value)}
              </text>
            )}
          </g>
        );
      })}
      <text className={styles.end} x={0} y={sizes.scale - 6}>
        {t('walk:placing.hook')}
      </text>
      <text className={styles.end} x={map.width} y={sizes.scale - 6} textAnchor="end">
        {t('walk:placing.housing')}
      </text>
    </>
  );
};
