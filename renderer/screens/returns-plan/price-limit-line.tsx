/** Up to which price the repair of one device is worth it: asked for when somebody wants to know, for it is a plan of its own. */
import { useEffect } from 'react';
import type { InputOf } from '../../../src/station/contract.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { call } from '../../station/client.ts';
import { useWork } from '../../station/use-work.ts';
import styles from './returns-plan.module.css';

const limitCalls = {
  isCommand: false,
  start: (input: InputOf<'return-plan.start'>) => call('return-plan.start', input),
  status: (job: number) => call('return-plan.status', { job }),
  cancel: (job: number) => call('return-plan.cancel', { job }),
};

export interface PriceLimitLineProps {
  readonly id: string;
  /** As people read it. */
  readonly name: string;
  /** Only one is worked out at a time. */
  readonly isAsked: boolean;
  readonly isDisabled: boolean;
  onAsk(): void;
}

export const PriceLimitLine = ({ id, name, isAsked, isDisabled, onAsk }: PriceLimitLineProps) => {
  const { t } = useText();
  const { status, error, isWorking, begin, cancel } = useWork(limitCalls);
  useEffect(() => {
    if (!isAsked) cancel();
  }, [isAsked, cancel]);
  const found = status?.state === 'planned' ? status.plan.limits.find((each) => each.id === id) : undefined;
  const refused = status?.state === 'refused' && isAsked ? status.sentence : undefined;
  if (found !== undefined)
    return (
      <p role="status" className={styles.limit}>
        {found.sentence ?? t('plan:noLimit')}
      </p>
    );
  return (
    <>
      <Button
        look="quiet"
        isDisabled={isDisabled}
        isRunning={isWorking}
        {...(isWorking ? {} : { label: t('plan:limitOf', { name }) })}
        onPress={() => {
          onAsk();
          begin({ limitsOf: [id] });
        }}
      >
        {isWorking ? t('plan:limitWorking') : t('plan:limit')}
      </Button>
      <AlertLine sentence={error?.sentence ?? refused} />
    </>
  );
};
