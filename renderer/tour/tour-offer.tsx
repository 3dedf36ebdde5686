/** On the start screen of the demo: the offer of the tour, until it was taken or put off, and the way back into it. */
import { Button } from '../components/button.tsx';
import { useText } from '../i18n/text.ts';
import { useReadyStation } from '../station/status.ts';
import styles from './tour.module.css';
import { useTour } from './tour.ts';

export const TourOffer = () => {
  const { t } = useText();
  const { state, resume, end } = useTour();
  const station = useReadyStation();
  if (station?.demo !== true || state.kind === 'over' || (state.kind === 'at' && !state.isLeft)) return null;
  return (
    <section className={styles.offer} aria-labelledby="tour-offer">
      <div className={styles.words}>
        <h2 id="tour-offer">{t('tour:offerTitle')}</h2>
        <p>{t('tour:offer')}</p>
      </div>
      <div className={styles.buttons}>
        <Button look="primary" onPress={resume}>
          {t(state.kind === 'at' ? 'tour:resume' : 'tour:start')}
        </Button>
        <Button onPress={end}>{t('tour:later')}</Button>
      </div>
    </section>
  );
};
