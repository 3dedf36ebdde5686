/** A device that comes back: one question after another, each asked and answered for this device. */
import { useEffect, useRef } from 'react';
import { Button } from '../../components/button.tsx';
import { NumberedChoices } from '../../components/numbered-choices.tsx';
import { useText } from '../../i18n/text.ts';
import { useSignedIn } from '../../station/status.ts';
import { useAskedFirst } from './asked-first.ts';
import styles from './desk.module.css';
import { type Asked, askedNow, type Incoming } from './desk-state.ts';
import { deviceWords } from './device-words.ts';
import type { Desk } from './use-desk.ts';
import { YesChoices } from './yes-choices.tsx';

export interface IncomingViewProps {
  readonly desk: Desk;
  readonly incoming: Incoming;
}

export const IncomingView = ({ desk, incoming }: IncomingViewProps) => {
  const { t } = useText();
  const { device } = incoming;
  const asked = askedNow(desk.questions, incoming);
  return (
    <div className={styles.main}>
      <p className={styles.large}>
        <strong>{t('desk:comesBack', { device: deviceWords(device) })}</strong> <From incoming={incoming} />
      </p>
      {asked?.isExplaining !== true && (
        <p>
          <WhoAnswers incoming={incoming} />
        </p>
      )}
      {asked !== undefined && <Question desk={desk} asked={asked} />}
      <div className={styles.row}>
        <Button onPress={desk.back}>{t('desk:back')}</Button>
      </div>
    </div>
  );
};

const From = ({ incoming: { device, heldBy } }: { readonly incoming: Incoming }) => {
  const { t } = useText();
  if (device.openCheckIn !== undefined) return t('desk:wasBegun');
  return device.custody === undefined ? t('desk:withoutCheckOut') : t('desk:from', { user: heldBy ?? '' });
};

const WhoAnswers = ({ incoming: { answeredBy, heldBy } }: { readonly incoming: Incoming }) => {
  const { t } = useText();
  const attendant = useSignedIn()?.name ?? '';
  if (answeredBy !== undefined) return t('desk:answers', { name: answeredBy.name });
  return heldBy === undefined
    ? t('desk:attendantAnswers', { attendant })
    : t('desk:attendantAnswersFor', { attendant, user: heldBy });
};

const Question = ({
  desk,
  asked: { question, isExplaining },
}: {
  readonly desk: Desk;
  readonly asked: Asked;
}) => {
  const { t, inLanguage } = useText();
  const heading = useRef<HTMLHeadingElement>(null);
  const { key } = question;
  const what = `${key} ${isExplaining}`;
  const { isAsked, wasRushed, take } = useAskedFirst(what);
  // Digits answer from here, wherever the code of the device was typed.
  useEffect(() => {
    if (what !== '') heading.current?.focus();
  }, [what]);
  const number = desk.questions.findIndex((each) => each.key === key) + 1;
  const answer = (said: 'no' | 'not known'): void => take(() => desk.answer({ question: key, said }));
  return (
    <div className={styles.main}>
      <h1 ref={heading} tabIndex={-1} className={styles.display}>
        {inLanguage(question.text)}
      </h1>
      <p>
        {t('desk:question', { number, of: desk.questions.length })}{' '}
        <strong role="status">
          {isAsked ? t('desk:answerNow') : wasRushed ? t('desk:rushed') : t('desk:askFirst')}
        </strong>
      </p>
      {isExplaining ? (
        <YesChoices key={key} desk={desk} question={question} take={take} />
      ) : (
        <NumberedChoices
          choices={[
            { key: 'no', label: t('desk:no'), onChoose: () => answer('no') },
            {
              key: 'yes',
              label: t('desk:yes'),
              onChoose: () => take(() => desk.answer({ question: key, said: 'yes', choices: [] })),
            },
            { key: 'not known', label: t('desk:notKnown'), onChoose: () => answer('not known') },
          ]}
        />
      )}
    </div>
  );
};
