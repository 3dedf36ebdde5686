/** What a yes was, while its device is held already: choices, words, or no more than the yes. */
import { useState } from 'react';
import type { CheckInQuestion } from '../../../src/domain/custody/desk-rules.ts';
import { Button } from '../../components/button.tsx';
import { NumberedChoices } from '../../components/numbered-choices.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useScanHandler } from '../../scan/scan.ts';
import type { AskedFirst } from './asked-first.ts';
import styles from './desk.module.css';
import type { Desk } from './use-desk.ts';

export interface YesChoicesProps {
  readonly desk: Desk;
  readonly question: CheckInQuestion;
  readonly take: AskedFirst['take'];
}

export const YesChoices = ({ desk, question, take }: YesChoicesProps) => {
  const { t, inLanguage } = useText();
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const [note, setNote] = useState('');
  const goOn = (): void => {
    const words = note.trim();
    desk.answer({
      question: question.key,
      said: 'yes',
      choices: [...chosen],
      ...(words === '' ? {} : { note: words }),
    });
  };
  const toggle = (key: string): void =>
    setChosen((before) =>
      before.includes(key) ? before.filter((other) => other !== key) : [...before, key],
    );
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command' || meaning.command !== 'confirm') return false;
    take(goOn);
    return true;
  });
  return (
    <>
      <p className={styles.large}>{t('desk:which')}</p>
      <NumberedChoices
        choices={question.choices.map(({ key, label }) => ({
          key,
          label: chosen.includes(key) ? `${inLanguage(label)}: ${t('desk:chosen')}` : inLanguage(label),
          onChoose: () => take(() => toggle(key)),
        }))}
      />
      <div className={styles.noted}>
        <TextInput label={t('desk:note')} value={note} onChange={setNote} />
        <Button look="remove" icon="stop" isRunning={desk.isBusy} onPress={() => take(goOn)}>
          {chosen.length === 0 && note.trim() === '' ? t('desk:goOnWithout') : t('desk:goOn')}
        </Button>
      </div>
    </>
  );
};
