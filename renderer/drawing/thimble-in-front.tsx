/** The piece of the lifeline's eye that lies in front of the hook's eye, so that the two are seen to be linked. */
import styles from './drawing.module.css';
import { Rod } from './rod.tsx';

export const ThimbleInFront = () => (
  <>
    <Rod path="M250 742C265 742 276 732 276 712" thickness={7} />
    <path className={styles.detail} d="M277 716L269 715M274 727L267 723M266 737L262 730M254 741L253 734" />
    <path className={styles.detail} d="M250 734C261 734 268 726 268 712" />
  </>
);
