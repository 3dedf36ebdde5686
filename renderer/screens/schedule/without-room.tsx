/** The devices for which the bench has no room. */
import { useText } from '../../i18n/text.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { PlannedTable } from './planned-table.tsx';

const mostShown = 100;

export const WithoutRoom = ({ count }: { readonly count: number }) => {
  const { t } = useText();
  const { data } = useStationQuery(
    'schedule.devices',
    { of: { kind: 'without room' }, limit: mostShown },
    { enabled: count > 0 },
  );
  if (count === 0 || data === undefined) return null;
  return (
    <PlannedTable
      devices={data.devices}
      caption={t('schedule:withoutRoom', { count: data.total, shown: data.devices.length })}
    />
  );
};
