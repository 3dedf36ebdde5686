/** The lower connector: a swivel snap hook with a gate that closes and locks by itself. */
import styles from './drawing.module.css';
import { Rod } from './rod.tsx';

const body =
  'M261 808C263 822 296 828 297 872C297 910 276 931 249 931C222 931 205 913 205 889V880C205 871 223 871 223 880C223 900 233 912 249 912C266 912 279 898 279 872C279 852 266 844 248 843L236 839C231 836 238 824 239 808Z';
const lever =
  'M284 830C294 830 306 848 308 868C308 873 301 874 299 870C297 856 290 842 281 838C277 835 279 830 284 830Z';

export const LowerHookPart = ({ indicator }: { readonly indicator: boolean }) => (
  <>
    <Rod path="M237 770V732C237 709 263 709 263 732V770" thickness={8} />
    <path className={styles.outline} d="M230 766H270V775H230Z" />
    {!indicator && <path className={styles.outline} d="M237 775H263V799H237Z" />}
    <path className={styles.outline} d="M232 799H268V809H232Z" />
    <path className={styles.detail} d="M239 799V809M246 799V809M254 799V809M261 799V809" />
    <path className={styles.outline} d={body} />
    <path className={styles.outline} d={lever} />
    <Rod path="M239 837L213 881" thickness={10} cap="round" />
    <circle className={styles.outline} cx="239" cy="837" r="2.600" />
    <path className={styles.detail} d="M288 872C288 905 270 922 249 922" />
  </>
);
