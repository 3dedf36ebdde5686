/** A device that comes back: one question after another, each answered for this device. */
import { useEffect, useRef, useState } from 'react';
import type { CheckInQuestion } from '../../../src/domain/custody/desk-rules.ts';
import { Button } from '../../components/button.tsx';
import { NumberedChoices } from '../../components/numbered-choices.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useScanHandler } from '../../scan/scan.ts';
import styles from './desk.module.css';
import type { Incoming } from './desk-state.ts';
import { deviceWords } from './device-words.ts';
import type { Desk } from './use-desk.ts';

export const IncomingView = ({ desk, incoming }: { readonly desk: Desk; readonly incoming: Incoming }) => {
  const { t, inLanguage } = useText();
  const { device, heldBy, answeredBy, answers, yes } = incoming;
  const question = desk.questions[answers.length];
  const asked = useRef<HTMLHeadingElement>(null);
  const key = question?.key;
  // Digits answer from here, wherever the code of the device was typed.
  useEffect(() => {
    if (key !== undefined) asked.current?.focus();
  }, [key]);
  const from =
    device.custody === undefined ? t('desk:withoutCheckOut') : t('desk:from', { user: heldBy ?? '' });
  return (
    <div className={styles.main}>
      <p className={styles.large}>
        <strong>{t('desk:comesBack', { device: deviceWords(device) })}</strong> {from}
      </p>
      <p>
        {answeredBy === undefined ? t('desk:attendantAnswers') : t('desk:answers', { name: answeredBy.name })}
      </p>
      {question !== undefined && (
        <div className={styles.main} key={question.key}>
          <h1 ref={asked} tabIndex={-1} className={styles.display}>
            {inLanguage(question.text)}
          </h1>
          <p>{t('desk:question', { number: answers.length + 1, of: desk.questions.length })}</p>
          {yes === undefined ? (
            <NumberedChoices
              choices={[
                {
                  key: 'no',
                  label: t('desk:no'),
                  onChoose: () => desk.answer({ question: question.key, said: 'no' }),
                },
                {
                  key: 'yes',
                  label: t('desk:yes'),
                  onChoose: () => desk.change((state) => ({ ...state, incoming: { ...incoming, yes: [] } })),
                },
                {
                  key: 'not known',
                  label: t('desk:notKnown'),
                  onChoose: () => desk.answer({ question: question.key, said: 'not known' }),
                },
              ]}
            />
          ) : (
            <YesChoices desk={desk} question={question} incoming={incoming} chosen={yes} />
          )}
        </div>
      )}
      <div className={styles.row}>
        <Button onPress={desk.back}>{t('desk:back')}</Button>
      </div>
    </div>
  );
};

interface YesChoicesProps {
  readonly desk: Desk;
  readonly question: CheckInQuestion;
  readonly incoming: Incoming;
  readonly chosen: readonly string[];
}

const YesChoices = ({ desk, question, incoming, chosen }: YesChoicesProps) => {
  const { t, inLanguage } = useText();
  const [note, setNote] = useState('');
  const goOn = (): void => {
    if (chosen.length === 0) return;
    const words = note.trim();
    desk.answer({
      question: question.key,
      said: 'yes',
      choices: [...chosen],
      ...(words === '' ? {} : { note: words }),
    });
  };
  const toggle = (key: string): void =>
    desk.change((state) => ({
      ...state,
      incoming: {
        ...incoming,
        yes: chosen.includes(key) ? chosen.filter((other) => other !== key) : [...chosen, key],
      },
    }));
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command' || meaning.command !== 'confirm') return false;
    goOn();
    return true;
  });
  return (
    <>
      <p className={styles.large}>{t('desk:which')}</p>
      <NumberedChoices
        choices={question.choices.map(({ key, label }) => ({
          key,
          label: chosen.includes(key) ? `${inLanguage(label)}: ${t('desk:chosen')}` : inLanguage(label),
          onChoose: () => toggle(key),
        }))}
      />
      <TextInput label={t('desk:note')} value={note} onChange={setNote} />
      <Button look="remove" size="large" icon="stop" isDisabled={chosen.length === 0} onPress={goOn}>
        {t('desk:goOn')}
      </Button>
    </>
  );
};
