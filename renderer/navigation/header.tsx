/** The head of the window: station, scan field, who is signed in, language, theme and help. */
import { CameraButton } from '../camera/camera-button.tsx';
import { Button } from '../components/button.tsx';
import { useTheme } from '../design/theme.ts';
import { HelpButton } from '../help/help-button.tsx';
import { useText } from '../i18n/text.ts';
import { ScanField } from '../scan/scan-field.tsx';
import { useReadyStation } from '../station/status.ts';
import styles from './header.module.css';
import { SignedIn } from './signed-in.tsx';

export const Header = () => {
  const { t } = useText();
  const station = useReadyStation();
  return (
    <header className={styles.header}>
      <div className={styles.station}>
        <span className={styles.name}>{station?.name ?? t('screens:app.name')}</span>
        {station?.demo === true ? <span className={styles.demo}>{t('screens:app.demo')}</span> : null}
      </div>
      <ScanField />
      <CameraButton />
      <SignedIn />
      <LookSwitches />
    </header>
  );
};

export const LookSwitches = () => {
  const { t, language, setLanguage } = useText();
  const { theme, toggle } = useTheme();
  return (
    <div className={styles.switches}>
      <HelpButton />
      <Button
        look="quiet"
        label={t('screens:header.languageLabel')}
        onPress={() => setLanguage(language === 'en' ? 'es' : 'en')}
      >
        {t(language === 'en' ? 'screens:header.toSpanish' : 'screens:header.toEnglish')}
      </Button>
      <Button
        look="quiet"
        icon={theme === 'light' ? 'moon' : 'sun'}
        label={t(theme === 'light' ? 'screens:header.toDark' : 'screens:header.toLight')}
        onPress={toggle}
      >
        {''}
      </Button>
    </div>
  );
};
