/** A small picture of a zone, the same that stands on the tags; says nothing to a screen reader. */
import lines from '../../assets/drawings/zone-pictograms.json';
import type { Zone } from '../../src/domain/procedure.ts';
import styles from './zone-pictogram.module.css';

export const ZonePictogram = ({ zone }: { readonly zone: Zone }) => (
  <svg className={styles.pictogram} viewBox="0 0 24 24" aria-hidden="true" focusable="false">
    <path d={lines[zone]} />
  </svg>
);
