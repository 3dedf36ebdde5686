/** The desk: badge, devices, done. The one next thing is the largest on the screen. */
import { useState } from 'react';
import type { BenchId } from '../../../src/domain/brand.ts';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { recall, remember } from '../../station/remembered.ts';
import { useReadyStation } from '../../station/status.ts';
import styles from './desk.module.css';
import { DeskNoticeView } from './desk-notice-view.tsx';
import { HandoverView } from './handover-view.tsx';
import { HeldDevice } from './held-device.tsx';
import { IncomingView } from './incoming-view.tsx';
import { OutgoingView } from './outgoing-view.tsx';
import { type Desk, useDesk } from './use-desk.ts';
import { useReturnOf } from './use-return-of.ts';

export interface DeskScreenProps {
  /** A device whose return begins at once. */
  readonly returning?: BenchId | undefined;
}

export const DeskScreen = ({ returning }: DeskScreenProps) => {
  const { t } = useText();
  const counts = useReadyStation()?.counts;
  const [isAloud, setAloud] = useState(() => recall('read-aloud') === 'yes');
  const desk = useDesk();
  useReturnOf(desk, returning);
  const toggleAloud = (): void => {
    remember('read-aloud', isAloud ? 'no' : 'yes');
    setAloud(!isAloud);
  };
  return (
    <div className={styles.desk}>
      <div className={styles.now}>
        <DeskNow desk={desk} isAloud={isAloud} />
      </div>
      <div className={styles.foot}>
        <Button icon="register" onPress={() => navigate({ screen: 'custody' })}>
          {t('desk:out', { count: counts?.out ?? 0 })}
        </Button>
        {counts !== undefined && counts.overdueReturns > 0 && (
          <Button icon="late" onPress={() => navigate({ screen: 'custody' })}>
            {t('desk:late', { count: counts.overdueReturns })}
          </Button>
        )}
        <Button icon="scan" onPress={() => navigate({ screen: 'count' })}>
          {t('desk:count')}
        </Button>
        <Button icon="tag" onPress={() => navigate({ screen: 'kits' })}>
          {t('desk:kits')}
        </Button>
        <div className={styles.room} />
        <Button {...(isAloud ? { icon: 'check' as const } : {})} onPress={toggleAloud}>
          {t('desk:aloud')}
        </Button>
        <Button number={0} onPress={desk.otherLanguage}>
          {t('desk:language')}
        </Button>
      </div>
    </div>
  );
};

const DeskNow = ({ desk, isAloud }: { readonly desk: Desk; readonly isAloud: boolean }) => {
  const { t } = useText();
  const { state, takesBack, isStaffed } = desk;
  const isIdle = state.held === undefined && state.notice === undefined && state.incoming === undefined;
  if (!takesBack || (!isStaffed && isIdle))
    return <Waiting title={t('desk:staff')} hint={t('desk:staffHint')} />;
  if (state.held !== undefined) {
    const { device, result } = state.held;
    return (
      <HeldDevice key={device.benchId} desk={desk} device={device} result={result}>
        {state.notice === undefined ? undefined : (
          <DeskNoticeView desk={desk} notice={state.notice} isAloud={isAloud} />
        )}
      </HeldDevice>
    );
  }
  if (state.notice !== undefined)
    return <DeskNoticeView desk={desk} notice={state.notice} isAloud={isAloud} />;
  if (state.incoming !== undefined) return <IncomingView desk={desk} incoming={state.incoming} />;
  if (state.handover !== undefined && state.user !== undefined)
    return <HandoverView desk={desk} handover={state.handover} user={state.user} />;
  if (state.user !== undefined) return <OutgoingView desk={desk} user={state.user} />;
  return <Waiting title={t('desk:title')} hint={t('desk:hint')} />;
};

const Waiting = ({ title, hint }: { readonly title: string; readonly hint: string }) => (
  <>
    <h1 className={styles.display}>{title}</h1>
    <p className={styles.large}>{hint}</p>
  </>
);
