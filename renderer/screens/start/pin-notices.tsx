/** For the administrator: whose PIN somebody guessed at in the last days. */
import { useText } from '../../i18n/text.ts';
import type { ReadyStation } from '../../station/status.ts';
import { PersonNotices } from './person-notices.tsx';

export const PinNotices = ({ notices = [] }: { readonly notices: ReadyStation['pinNotices'] }) => {
  const { t, dateText } = useText();
  return (
    <PersonNotices
      id="pin-notices"
      title={t('people:pinNotices.title')}
      notices={notices.map(({ personId, name, inARow, on, isClosed }) => ({
        personId,
        name,
        icon: isClosed ? 'lock' : 'warning',
        words: t(isClosed ? 'people:pinNotices.closed' : 'people:pinNotices.wait', {
          count: inARow,
          date: dateText(on),
        }),
      }))}
    />
  );
};
