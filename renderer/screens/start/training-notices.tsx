/** For the administrator: whose training has run out, or will soon. */
import { useText } from '../../i18n/text.ts';
import type { ReadyStation } from '../../station/status.ts';
import { PersonNotices } from './person-notices.tsx';

export const TrainingNotices = ({ notices = [] }: { readonly notices: ReadyStation['trainingNotices'] }) => {
  const { t, dateText } = useText();
  return (
    <PersonNotices
      id="training-notices"
      title={t('people:notices.title')}
      notices={notices.map(({ personId, name, notice, on }) => ({
        personId,
        name,
        icon: notice === 'expired' ? 'late' : 'clock',
        words: t(notice === 'expired' ? 'people:notices.expired' : 'people:notices.soon', {
          date: dateText(on),
        }),
      }))}
    />
  );
};
