/** The signs that stand beside words: 24 units square, drawn with one stroke. */
import { classes } from '../design/classes.ts';
import styles from './icon.module.css';

const paths = {
  check: 'M12 2.5a9.5 9.5 0 1 0 0 19 9.5 9.5 0 0 0 0-19Z M7.5 12.3l3.1 3.1 6-6.4',
  stop: 'M8 2.5h8l5.5 5.5v8L16 21.5H8L2.5 16V8Z M7.5 12h9',
  away: 'M3 6h10v12H3Z M13 12h8 M17.5 8.5 21 12l-3.5 3.5',
  cross: 'M12 2.5a9.5 9.5 0 1 0 0 19 9.5 9.5 0 0 0 0-19Z M8.5 8.5l7 7 M15.5 8.5l-7 7',
  blank:
    'M12 2.5a9.5 9.5 0 1 0 0 19 9.5 9.5 0 0 0 0-19Z M9.4 9.5a2.7 2.7 0 1 1 3.7 2.5c-.8.4-1.1.9-1.1 1.8 M12 17v.2',
  clock: 'M12 2.5a9.5 9.5 0 1 0 0 19 9.5 9.5 0 0 0 0-19Z M12 6.5V12l3.6 2.4',
  calendar: 'M4 5.5h16V20H4Z M4 10h16 M8 3v4 M16 3v4 M8 14h3 M13 14h3',
  late: 'M12 3 22 20.5H2Z M12 9.5v5 M12 17.4v.2',
  scan: 'M3 8V4h4 M17 4h4v4 M21 16v4h-4 M7 20H3v-4 M7 8.5v7 M10.3 8.5v7 M13.6 8.5v7 M17 8.5v7',
  person: 'M12 3.5a4 4 0 1 0 0 8 4 4 0 0 0 0-8Z M4 20.5c.8-4 3.8-6 8-6s7.2 2 8 6',
  home: 'M3.5 11 12 4l8.5 7 M6 9.5V20h12V9.5',
  bench: 'M3 9.5h18 M5 9.5V20 M19 9.5V20 M9 9.5V5h6v4.5',
  register: 'M5 3.5h14v17H5Z M8.5 8h7 M8.5 12h7 M8.5 16h4.5',
  setup: 'M4 7h9 M17 7h3 M4 17h3 M11 17h9 M15 4.7v4.6 M9 14.7v4.6',
  sun: 'M12 8a4 4 0 1 0 0 8 4 4 0 0 0 0-8Z M12 2v2.5 M12 19.5V22 M2 12h2.5 M19.5 12H22 M5 5l1.7 1.7 M17.3 17.3 19 19 M19 5l-1.7 1.7 M6.7 17.3 5 19',
  moon: 'M20 14.5A8.5 8.5 0 1 1 9.5 4a7 7 0 0 0 10.5 10.5Z',
  tag: 'M3.5 12.5 12 4h8v8l-8.5 8.5Z M16.2 7.6v.2',
  forward: 'M5 12h14 M13 6l6 6-6 6',
  camera: 'M3 8h4l2-3h6l2 3h4v11H3Z M12 9.5a3.8 3.8 0 1 0 0 7.6 3.8 3.8 0 0 0 0-7.6Z',
  picture: 'M3 5h18v14H3Z M3 16l5-5 4.5 4.5 3-3L21 17.5 M15.5 8.5v.2',
  measure: 'M3 6.5v11 M21 6.5v11 M7 12h10 M10 9l-3 3 3 3 M14 9l3 3-3 3',
  plus: 'M12 5v14 M5 12h14',
  lock: 'M5.5 10.5h13V21h-13Z M8.5 10.5V7a3.5 3.5 0 0 1 7 0v3.5 M12 14.5v2.5',
  warning: 'M12 3 22 20.5H2Z M12 9.5v5 M12 17.4v.2',
} as const;

export type IconName = keyof typeof paths;

/** Says nothing to a screen reader: the word beside it does. */
export const Icon = ({ name, large = false }: { readonly name: IconName; readonly large?: boolean }) => (
  <svg
    className={classes(styles.icon, large && styles.large)}
    viewBox="0 0 24 24"
    aria-hidden="true"
    focusable="false"
  >
    <path d={paths[name]} />
  </svg>
);
