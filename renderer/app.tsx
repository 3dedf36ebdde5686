/** The whole window: asks for the station, and shows the first start, or the shell with the screen of the route. */
import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { I18nProvider } from 'react-aria-components';
import { Opening } from './components/opening.tsx';
import { HelpProvider } from './help/help-provider.tsx';
import { currentLanguage } from './i18n/catalogue.ts';
import { useLanguage } from './i18n/language.ts';
import { Unattended } from './lock/unattended.tsx';
import { Shell } from './navigation/shell.tsx';
import { ScanProvider } from './scan/scan-provider.tsx';
import { FirstStartScreen } from './screens/first-start/first-start-screen.tsx';
import { queryKeyOf, useStationQuery } from './station/hooks.ts';
import { type StationStatus, StationStatusContext, useUnlockedStatus } from './station/status.ts';
import { TourProvider } from './tour/tour-provider.tsx';

const queries = new QueryClient({
  defaultOptions: {
    queries: { retry: false, staleTime: 5_000, networkMode: 'always', refetchOnWindowFocus: true },
  },
});

/** What the station said before there was a window to show it. */
export const knowStatus = (status: StationStatus): void =>
  void queries.setQueryData(queryKeyOf('station.status', {}, currentLanguage()), status);

export const App = () => (
  <QueryClientProvider client={queries}>
    <ScanProvider>
      <Station />
    </ScanProvider>
  </QueryClientProvider>
);

const Station = () => {
  const language = useLanguage();
  const { data, error, refetch } = useStationQuery('station.status', {}, { keepPrevious: true });
  const shown = useUnlockedStatus(data);
  if (data === undefined || shown === undefined) return <Opening error={error} onRetry={refetch} />;
  return (
    <I18nProvider locale={language}>
      <StationStatusContext value={shown}>
        <TourProvider>
          <HelpProvider>{shown.state === 'empty' ? <FirstStartScreen /> : <Shell />}</HelpProvider>
        </TourProvider>
        {data.state === 'empty' ? null : <Unattended station={data} />}
      </StationStatusContext>
    </I18nProvider>
  );
};
