/** The upper connector: a carabiner with a locking sleeve, hung in an anchor eye, and the swivel that carries the housing. */
import styles from './drawing.module.css';
import { Rod } from './rod.tsx';

const carabiner =
  'M236 178C224 178 218 168 216 154L206 78C203 48 224 32 250 32C277 32 292 48 291 74L285 152C283 168 278 178 266 178Z';
const eye = 'M235 202V164C235 140 265 140 265 164V202';
const eyeInFront = 'M235 202V164C235 152 242 146 250 146H250.7';

export const UpperHookPart = () => (
  <>
    <Rod path={eye} thickness={8} />
    <Rod path={carabiner} thickness={14} />
    <Rod path={eyeInFront} thickness={8} />
    <path className={styles.detail} d="M282 92L278 142M222 52C228 44 238 40 250 40" />
    <g transform="rotate(-7.500 211 112)">
      <rect className={styles.outline} x="200.500" y="82" width="21" height="56" rx="2.500" />
      <path
        className={styles.detail}
        d="M200.500 91H221.500M200.500 100H221.500M200.500 109H221.500M200.500 118H221.500M200.500 127H221.500"
      />
      <path className={styles.outline} d="M202.500 70H219.500V82H202.500ZM202.500 138H219.500V147H202.500Z" />
    </g>
    <circle className={styles.outline} cx="217.500" cy="155" r="3.200" />
    <path
      className={styles.outline}
      d="M228 197H272C275 197 276 199 276 201V212H224V201C224 199 225 197 228 197Z"
    />
    <path className={styles.outline} d="M233 212H267V220H233Z" />
    <path className={styles.detail} d="M239.500 212V220M246.500 212V220M253.500 212V220M260.500 212V220" />
  </>
);
