/** The housing: two shells with a rim, the lug that hangs in the swivel, the hub cover, and the guide where the lifeline comes out. */
import styles from './drawing.module.css';

const shell =
  'M228 219H272L280 234C330 246 366 288 366 344C366 398 334 440 288 456L281 474H219L212 456C166 440 134 398 134 344C134 288 170 246 220 234Z';

export const HousingPart = () => (
  <>
    <path className={styles.outline} d={shell} />
    <path className={styles.detail} d="M228 219L224 240M272 219L276 240" />
    <circle className={styles.outline} cx="250" cy="344" r="101" />
    <path className={styles.detail} d="M250 257A87 87 0 0 1 337 344M250 257A87 87 0 0 0 163 344" />
    <path
      className={styles.detail}
      d="M178 318L198 325M322 318L302 325M196 283L211 299M304 283L289 299M223 262L230 283M277 262L270 283"
    />
    <path
      className={styles.outline}
      d="M223 474H277V486C277 490 275 492 271 492H229C225 492 223 490 223 486Z"
    />
    <path className={styles.outline} d="M234 492H266L262 503H238Z" />
    <path className={styles.detail} d="M231 480H269M231 486H269" />
  </>
);
