/** The setup of the station: its people, its model sheets, its printers, its command sheet and its record. */
import { Tab, TabList, TabPanel, Tabs } from 'react-aria-components';
import { useText } from '../../i18n/text.ts';
import { ModelSheets } from './model-sheets.tsx';
import { People } from './people.tsx';
import { Printers } from './printers.tsx';
import { ScannerPanel } from './scanner-panel.tsx';
import styles from './setup.module.css';
import { StationPanel } from './station-panel.tsx';

const panels = [
  { id: 'people', Panel: People },
  { id: 'models', Panel: ModelSheets },
  { id: 'station', Panel: StationPanel },
  { id: 'printers', Panel: Printers },
  { id: 'scanner', Panel: ScannerPanel },
] as const;

export const SetupScreen = () => {
  const { t } = useText();
  return (
    <Tabs className={styles.screen ?? ''}>
      <div className={styles.head}>
        <h1>{t('screens:setup.title')}</h1>
        <TabList className={styles.tabs ?? ''} aria-label={t('screens:setup.title')}>
          {panels.map(({ id }) => (
            <Tab key={id} id={id} className={styles.tab ?? ''}>
              {t(`screens:setup.${id}`)}
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
