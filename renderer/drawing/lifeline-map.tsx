/** The map of a lifeline: every inspection a length of rope, to scale, with findings over it and readings under it. */
import { useMemo } from 'react';
import { metres } from '../../src/domain/brand.ts';
import type { LifelineFinding, LifelineInspection } from '../../src/domain/lifeline/lifeline-inspection.ts';
import { lifelineMap } from '../../src/domain/lifeline/map.ts';
import { useText } from '../i18n/text.ts';
import styles from './lifeline-map.module.css';
import { LifelineMapRow } from './lifeline-map-row.tsx';
import { LifelineMapScale } from './lifeline-map-scale.tsx';
import { rowHeight, mapSizes as sizes } from './lifeline-map-sizes.ts';
import { measureText } from './measure-text.ts';

export interface LifelineMapProps {
  readonly ratedLengthM: number;
  readonly minimumDiameterMm: number | undefined;
  readonly inspections: readonly LifelineInspection[];
  /** Words over each length of rope. */
  readonly headingOf: (inspection: LifelineInspection) => string;
}

export const LifelineMap = ({
  ratedLengthM,
  minimumDiameterMm,
  inspections,
  headingOf,
}: LifelineMapProps) => {
  const { t, lengthText, lengthUnit, diameterText, inLanguage } = useText();
  const map = useMemo(() => {
    const wordsOf = ({ label, positionM }: LifelineFinding) =>
      `${inLanguage(label)}, ${lengthText(positionM)}`;
    const textOfFindings = (findings: readonly LifelineFinding[]): string => {
      const [first] = findings;
      const last = findings.at(-1);
      if (first === undefined || last === undefined) return '';
      return findings.length === 1
        ? wordsOf(first)
        : t('evidence:map.cluster', {
            count: findings.length,
            from: lengthText(first.positionM),
            to: lengthText(last.positionM),
          });
    };
    return lifelineMap({
      ratedLengthM: metres(ratedLengthM),
      unit: lengthUnit,
      minimumDiameterMm,
      inspections,
      width: sizes.width,
      gap: sizes.labelGap,
      markWidth: sizes.mark,
      measure: (text) => measureText(text, sizes.text) + 2 * sizes.labelPadding,
      textOfFindings,
      textOfReading: ({ diameterMm }) => diameterText(diameterMm),
    });
  }, [ratedLengthM, minimumDiameterMm, inspections, t, lengthText, lengthUnit, diameterText, inLanguage]);

  const tops = [0];
  for (const row of map.rows) tops.push((tops.at(-1) ?? 0) + rowHeight(row));
  const bottom = tops.at(-1) ?? 0;
  const said = map.rows.map(({ inspection }) =>
    [
      headingOf(inspection),
      ...inspection.findings.map(({ label, positionM }) => `${inLanguage(label)}, ${lengthText(positionM)}`),
      ...inspection.readings.map(({ diameterMm, positionM }) =>
        t('evidence:diameter.reading', {
          diameter: diameterText(diameterMm),
          length: lengthText(positionM),
        }),
      ),
    ].join('; '),
  );
  return (
    <svg
      className={styles.map}
      viewBox={`${-sizes.margin} 0 ${sizes.width + 2 * sizes.margin} ${bottom + sizes.scale}`}
      role="img"
      aria-label={`${t('evidence:map.label')}. ${said.join('. ')}`}
    >
      {map.rows.map((row, index) => (
        <g key={row.inspection.inspection} transform={`translate(0 ${tops[index] ?? 0})`}>
          <LifelineMapRow row={row} heading={headingOf(row.inspection)} />
        </g>
      ))}
      <g transform={`translate(0 ${bottom})`}>
        <LifelineMapScale map={map} />
      </g>
    </svg>
  );
};
