/** A small picture of a defect, beside its name; says nothing to a screen reader. */
import { defectLines } from './defect-lines.ts';
import styles from './defect-pictogram.module.css';

export const DefectPictogram = ({ defect }: { readonly defect: string }) => {
  const lines = defectLines[defect.replace(/-stays$/, '')];
  return lines === undefined ? null : (
    <svg className={styles.pictogram} viewBox="0 0 64 40" aria-hidden="true" focusable="false">
      <path d={lines} />
    </svg>
  );
};
