/** What the desktop shell has to say over every screen, one thing at a time: that the window broke down, that the PC runs on its battery. */
import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { AlertLine } from '../components/alert-line.tsx';
import { useText } from '../i18n/text.ts';
import { onShellNews, shellState } from '../station/shell-bridge.ts';
import { useSignedIn } from '../station/status.ts';
import styles from './shell.module.css';

export const ShellNotices = () => {
  const { t } = useText();
  const queries = useQueryClient();
  const person = useSignedIn();
  const [onBattery, setOnBattery] = useState(false);
  const [wasRecovered, setRecovered] = useState(false);
  useEffect(() => {
    onShellNews((news) => {
      if (news.news === 'power') setOnBattery(news.onBattery);
      else void queries.invalidateQueries();
    });
    void shellState().then((state) => {
      setOnBattery(state?.onBattery === true);
      setRecovered(state?.wasRecovered === true);
    });
  }, [queries]);
  useEffect(() => {
    if (person !== undefined) setRecovered(false);
  }, [person]);
  if (!onBattery && !wasRecovered) return null;
  return (
    <div className={styles.notices}>
      <AlertLine sentence={t(wasRecovered ? 'screens:shell.recovered' : 'screens:shell.onBattery')} />
    </div>
  );
};
