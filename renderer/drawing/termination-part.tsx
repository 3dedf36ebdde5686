/** The termination of the lifeline: stop, swaged sleeves, and the thimble in its eye. */
import styles from './drawing.module.css';
import { Rod } from './rod.tsx';

const eye =
  'M246 664C246 678 224 690 224 712C224 732 235 742 250 742C265 742 276 732 276 712C276 690 254 678 254 664';
const thimble =
  'M250 677C243 685 232 694 232 712C232 726 239 734 250 734C261 734 268 726 268 712C268 694 257 685 250 677Z';
const strands =
  'M226 697L233 701M223 706L231 708M223 716L231 715M226 727L233 723M234 737L238 730M246 741L247 734M274 697L267 701M277 706L269 708M277 716L269 715M274 727L267 723M266 737L262 730M254 741L253 734M233 688L239 693M267 688L261 693';

const Sleeve = ({ y }: { readonly y: number }) => (
  <>
    <rect className={styles.outline} x="237" y={y} width="26" height="22" rx="6" />
    <path className={styles.detail} d={`M239 ${y + 6.5}H261M239 ${y + 11}H261M239 ${y + 15.5}H261`} />
  </>
);

export const TerminationPart = () => (
  <>
    <Rod path={eye} thickness={7} />
    <path className={styles.detail} d={strands} />
    <path className={styles.hollow} d={thimble} />
    <Rod path="M246 616V666M254 616V666" thickness={6.5} />
    <path className={styles.detail} d="M250 616V666" />
    <Sleeve y={622} />
    <Sleeve y={650} />
    <rect className={styles.outline} x="233" y="592" width="34" height="24" rx="8" />
    <path className={styles.detail} d="M240 592V616M260 592V616" />
  </>
);
