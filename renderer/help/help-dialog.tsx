/** What the screen is for, the keys and symbols that work on it, and the way to everything else that helps. */
import { commandSymbols, placeNames } from '../../src/domain/command-symbol.ts';
import { Button } from '../components/button.tsx';
import { Dialog } from '../components/dialog.tsx';
import { type Text, useText } from '../i18n/text.ts';
import { navigate, type Route, useRoute } from '../navigation/route.ts';
import { useNumberedActs } from '../scan/use-numbered-acts.ts';
import { useReadyStation } from '../station/status.ts';
import { useTour } from '../tour/tour.ts';
import styles from './help.module.css';
import type { KeyHere } from './keys-on-screen.ts';

export interface HelpDialogProps {
  readonly keys: readonly KeyHere[];
  onClose(): void;
}

export const HelpDialog = ({ keys, onClose }: HelpDialogProps) => {
  const text = useText();
  const { t } = text;
  const station = useReadyStation();
  const { screen } = useRoute();
  const tour = useTour();
  const shown = station === undefined ? 'first-start' : screen;
  const goTo = (route: Route) => (): void => {
    onClose();
    navigate(route);
  };
  const takeTour = (): void => {
    onClose();
    tour.resume();
  };
  const ways = [
    goTo({ screen: 'limits' }),
    goTo({ screen: 'setup', panel: 'station' }),
    goTo({ screen: 'setup', panel: 'health' }),
    ...(station?.demo === true ? [takeTour] : []),
  ];
  useNumberedActs(station === undefined ? [] : ways);
  return (
    <Dialog title={t('help:title', { screen: t(`help:screen.${shown}`) })} onClose={onClose} isWide>
      <p className={styles.purpose}>{t(`help:for.${shown}`)}</p>
      <div className={styles.columns}>
        <section className={styles.column} aria-labelledby="help-here">
          <h3 id="help-here">{t('help:here')}</h3>
          {keys.length === 0 ? (
            <p>{t('help:none')}</p>
          ) : (
            <>
              <p>{t('help:hereText')}</p>
              <dl className={styles.keys}>
                {keys.map(({ key, does }) => (
                  <div key={key} className={styles.line}>
                    <dt className={styles.key}>{key}</dt>
                    <dd>{does}</dd>
                  </div>
                ))}
              </dl>
            </>
          )}
        </section>
        <section className={styles.column} aria-labelledby="help-everywhere">
          <h3 id="help-everywhere">{t('help:everywhere')}</h3>
          <p>{t('help:scan')}</p>
          <p>{t('help:places', { names: placeNames.map((name) => nameOf(name, text)).join(', ') })}</p>
          <p>{t('help:cancel', { cancel: nameOf('cancel', text) })}</p>
          <p>{t('help:this', { help: nameOf('help', text) })}</p>
        </section>
      </div>
      <div className={styles.ways}>
        {station === undefined ? null : (
          <>
            <Button number={1} onPress={ways[0] ?? onClose}>
              {t('help:limits')}
            </Button>
            <Button number={2} onPress={ways[1] ?? onClose}>
              {t('help:card')}
            </Button>
            <Button number={3} onPress={ways[2] ?? onClose}>
              {t('help:checkup')}
            </Button>
          </>
        )}
        {station?.demo === true ? (
          <Button number={4} onPress={takeTour}>
            {t('help:tour')}
          </Button>
        ) : null}
        <Button look="primary" autoFocus onPress={onClose}>
          {t('help:close')}
        </Button>
      </div>
    </Dialog>
  );
};

/** As it is printed on the command sheet. */
const nameOf = (command: (typeof commandSymbols)[number]['name'], { inLanguage }: Text): string => {
  const symbol = commandSymbols.find(({ name }) => name === command);
  return symbol === undefined ? command : inLanguage(symbol.label);
};
