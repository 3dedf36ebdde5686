/** A part of the drawing that belongs to a zone; the lit zone gets a halo and a heavier line. */
import type { ReactNode } from 'react';
import type { Zone } from '../../src/domain/procedure.ts';
import styles from './drawing.module.css';

export interface ZonePartProps {
  readonly zone: Zone;
  readonly lit: Zone | undefined;
  readonly children: ReactNode;
}

export const ZonePart = ({ zone, lit, children }: ZonePartProps) => {
  if (zone !== lit && lit !== 'whole-device') return <g className={styles.part}>{children}</g>;
  return (
    <g data-lit="true">
      <g className={styles.halo}>{children}</g>
      <g className={`${styles.part} ${styles.lit}`}>{children}</g>
    </g>
  );
};

/** A piece that overlaps the part after it; it has no halo of its own. */
export const ZonePartInFront = ({ zone, lit, children }: ZonePartProps) => (
  <g className={zone === lit || lit === 'whole-device' ? `${styles.part} ${styles.lit}` : styles.part}>
    {children}
  </g>
);
