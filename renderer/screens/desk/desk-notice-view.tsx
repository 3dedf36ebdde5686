/** What the desk says in one large sentence: what stays and why, what is out, what is back, what is held. */
import { useEffect } from 'react';
import type { Message } from '../../../src/domain/message.ts';
import { Button } from '../../components/button.tsx';
import { Icon } from '../../components/icon.tsx';
import { NumberedChoices } from '../../components/numbered-choices.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './desk.module.css';
import { type DeskNotice, withoutNotice } from './desk-state.ts';
import { deviceWords } from './device-words.ts';
import type { Desk } from './use-desk.ts';

export interface DeskNoticeViewProps {
  readonly desk: Desk;
  readonly notice: DeskNotice;
  readonly isAloud: boolean;
}

export const DeskNoticeView = ({ desk, notice, isAloud }: DeskNoticeViewProps) => {
  const { t } = useText();
  const next = () => desk.change(withoutNotice);
  const nextButton = (
    <div className={styles.row}>
      <Button look="primary" size="large" icon="forward" autoFocus onPress={next}>
        {t('desk:next')}
      </Button>
    </div>
  );
  switch (notice.kind) {
    case 'refused':
      return <Refused desk={desk} notice={notice} isAloud={isAloud} onNext={next} />;
    case 'unfinished':
      return (
        <div className={styles.refused} role="alert">
          <h1 className={styles.display}>
            {notice.user === undefined ? t('desk:unfinished') : t('desk:unconfirmed', { user: notice.user })}
          </h1>
          {nextButton}
        </div>
      );
    case 'in store':
      return (
        <div className={styles.main}>
          <h1 className={styles.display}>{t('desk:inStore', { device: deviceWords(notice.device) })}</h1>
          <p className={styles.large}>{t('desk:inStoreHint')}</p>
          <NumberedChoices
            choices={[
              {
                key: 'found',
                label: t('desk:found'),
                onChoose: () => desk.beginReturn(notice.device),
              },
              { key: 'next', label: t('desk:next'), onChoose: next },
            ]}
          />
        </div>
      );
    case 'gone':
      return (
        <div className={styles.done} role="status">
          <h1 className={styles.display}>
            <Icon name="check" large />
            {t('desk:gone', { user: notice.user, count: notice.count })}
          </h1>
          {nextButton}
        </div>
      );
    case 'back':
      return (
        <div className={styles.done} role="status">
          <h1 className={styles.display}>
            <Icon name="check" large />
            {t('desk:isBack', { device: deviceWords(notice.device) })}
          </h1>
          {nextButton}
        </div>
      );
  }
};

interface RefusedProps {
  readonly desk: Desk;
  readonly notice: Extract<DeskNotice, { kind: 'refused' }>;
  readonly isAloud: boolean;
  onNext(): void;
}

const Refused = ({ desk, notice, isAloud, onNext }: RefusedProps) => {
  const { t, inLanguage, language } = useText();
  const { device, heldBy, sentence, gone } = notice;
  const { user } = desk.state;
  useReadAloud(sentence, language, isAloud);
  return (
    <div className={styles.refused} role="alert">
      <p className={styles.sign}>
        <Icon name="stop" large />
        {t('desk:stays')}
      </p>
      <h1 className={styles.display}>{inLanguage(sentence)}</h1>
      {gone !== undefined && <p className={styles.large}>{t('desk:gone', gone)}</p>}
      <NumberedChoices
        choices={[
          { key: 'next', label: t('desk:next'), isPrimary: true, onChoose: onNext },
          ...(device === undefined || heldBy === undefined
            ? []
            : [
                {
                  key: 'check in',
                  label: t('desk:checkIn'),
                  onChoose: () => desk.beginReturn(device, heldBy),
                },
                {
                  key: 'hand over',
                  label: t('desk:handOver', { from: heldBy, to: user?.name ?? '' }),
                  onChoose: () => desk.beginHandover(device, heldBy),
                },
              ]),
        ]}
      />
    </div>
  );
};

/** Beside the sentence on the screen, never instead of it. */
const useReadAloud = (sentence: Message, language: keyof Message, isAloud: boolean): void => {
  const words = sentence[language];
  useEffect(() => {
    if (!isAloud || !('speechSynthesis' in window)) return;
    const utterance = new SpeechSynthesisUtterance(words);
    utterance.lang = language;
    window.speechSynthesis.cancel();
    window.speechSynthesis.speak(utterance);
    return () => window.speechSynthesis.cancel();
  }, [words, language, isAloud]);
};
