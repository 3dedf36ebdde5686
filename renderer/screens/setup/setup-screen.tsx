/** The setup of the station: its people, its model sheets, its printers, its command sheet, its record, and what goes in and out, and how it all stands. */
import type { ReactNode } from 'react';
import { Tab, TabList, TabPanel, Tabs } from 'react-aria-components';
import { type TextKey, useText } from '../../i18n/text.ts';
import { ExchangePanel } from '../exchange/exchange-panel.tsx';
import { HealthPanel } from '../health/health-panel.tsx';
import { KeepingPanel } from '../keeping/keeping-panel.tsx';
import { People } from '../people/people.tsx';
import { ProgramPanel } from '../program/program-panel.tsx';
import { ModelSheets } from './model-sheets.tsx';
import { Printers } from './printers.tsx';
import { ScannerPanel } from './scanner-panel.tsx';
import styles from './setup.module.css';
import { StationPanel } from './station-panel.tsx';

const panels: readonly { readonly id: string; readonly title: TextKey; readonly Panel: () => ReactNode }[] = [
  { id: 'people', title: 'screens:setup.people', Panel: People },
  { id: 'models', title: 'screens:setup.models', Panel: ModelSheets },
  { id: 'program', title: 'program:tab', Panel: ProgramPanel },
  { id: 'station', title: 'screens:setup.station', Panel: StationPanel },
  { id: 'printers', title: 'screens:setup.printers', Panel: Printers },
  { id: 'scanner', title: 'screens:setup.scanner', Panel: ScannerPanel },
  { id: 'exchange', title: 'exchange:tab', Panel: ExchangePanel },
  { id: 'keeping', title: 'keeping:tab', Panel: KeepingPanel },
  { id: 'health', title: 'health:tab', Panel: HealthPanel },
];

export const SetupScreen = ({ panel }: { readonly panel?: string | undefined }) => {
  const { t } = useText();
  return (
    <Tabs
      className={styles.screen ?? ''}
      defaultSelectedKey={panels.find(({ id }) => id === panel)?.id ?? 'people'}
    >
      <div className={styles.head}>
        <h1>{t('screens:setup.title')}</h1>
        <TabList className={styles.tabs ?? ''} aria-label={t('screens:setup.title')}>
          {panels.map(({ id, title }) => (
            <Tab key={id} id={id} className={styles.tab ?? ''}>
              {t(title)}
            </Tab>
          ))}
        </TabList>
      </div>
      {panels.map(({ id, Panel }) => (
        <TabPanel key={id} id={id} className={styles.panel ?? ''}>
          <Panel />
        </TabPanel>
      ))}
    </Tabs>
  );
};
