/** A device that is out of service as it came back: its tag comes out while what is still open is asked. */
import type { ReactNode } from 'react';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './desk.module.css';
import { askedNow, type HeldDevice as Held } from './desk-state.ts';
import { deviceWords } from './device-words.ts';
import { HeldView } from './held-view.tsx';
import { IncomingView } from './incoming-view.tsx';
import { QuarantineTagLine } from './quarantine-tag-line.tsx';
import type { Desk } from './use-desk.ts';
import { useQuarantineTag } from './use-quarantine-tag.ts';

export interface HeldDeviceProps extends Held {
  readonly desk: Desk;
  /** What the desk has to say first, if anything. */
  readonly children?: ReactNode;
}

export const HeldDevice = ({ desk, device, result, children }: HeldDeviceProps) => {
  const { t } = useText();
  const { incoming } = desk.state;
  const isExplaining = incoming !== undefined && askedNow(desk.questions, incoming)?.isExplaining === true;
  const tag = useQuarantineTag(device.benchId, result.quarantineTag, isExplaining);
  if (children !== undefined) return children;
  if (incoming === undefined) return <HeldView desk={desk} device={device} result={result} tag={tag} />;
  return (
    <>
      <div className={styles.band} role="status">
        <p className={styles.sign}>
          <Icon name="stop" />
          {t('desk:held', { device: deviceWords(device) })}
        </p>
        <QuarantineTagLine tag={tag} />
      </div>
      <IncomingView desk={desk} incoming={incoming} />
    </>
  );
};
