/** The brake inside the housing, as if the hub cover were transparent: ratchet ring, pawls and drum shaft. */
import styles from './drawing.module.css';

const centre = { x: 250, y: 330 };
const ratchetRadius = 40;
const teeth = 18;

const ratchet = Array.from({ length: teeth }, (_, index) => {
  const angle = (index / teeth) * 2 * Math.PI;
  const next = angle + (0.62 / teeth) * 2 * Math.PI;
  return `${point(ratchetRadius, angle)}L${point(ratchetRadius - 6, next)}`;
}).join('L');

function point(radius: number, angle: number): string {
  const x = centre.x + radius * Math.cos(angle);
  const y = centre.y + radius * Math.sin(angle);
  return `${x.toFixed(1)} ${y.toFixed(1)}`;
}

export const BrakePart = () => (
  <>
    <circle className={styles.outline} cx={centre.x} cy={centre.y} r="48" />
    <path className={styles.detail} d={`M${ratchet}Z`} />
    {[0, 120, 240].map((turn) => (
      <g key={turn} transform={`rotate(${turn} ${centre.x} ${centre.y})`}>
        <path
          className={styles.outline}
          d="M246 308C252 303 264 302 272 300L275 305C269 311 260 315 250 316C245 316 243 311 246 308Z"
        />
        <circle className={styles.detail} cx="250" cy="311.500" r="1.800" />
      </g>
    ))}
    <circle className={styles.outline} cx={centre.x} cy={centre.y} r="9" />
    <path className={styles.detail} d="M245.500 330H254.500M250 325.500V334.500" />
  </>
);
