/** Takes a device out of service at once: the ground by number, a note where the program asks for one. */
import { type FormEvent, useState } from 'react';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { BenchId } from '../../../src/domain/brand.ts';
import type { Program } from '../../../src/domain/program.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { NumberedChoices } from '../../components/numbered-choices.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { useStationCommand, useStationQuery } from '../../station/hooks.ts';
import styles from './device.module.css';

export interface RemoveDialogProps {
  readonly benchId: BenchId;
  onClose(): void;
}

type Ground = Program['removalGrounds'][number];

export const RemoveDialog = ({ benchId, onClose }: RemoveDialogProps) => {
  const { t, inLanguage } = useText();
  const procedure = useStationQuery('procedure.show', {});
  const [ground, setGround] = useState<Ground>();
  const title = t('screens:device.removeTitle', { benchId: formatBenchId(benchId) });
  return (
    <Dialog title={title} onClose={onClose}>
      {ground === undefined ? (
        <>
          <p>{t('screens:device.removeAsk')}</p>
          <AlertLine sentence={procedure.error?.sentence} />
          <NumberedChoices
            choices={(procedure.data?.program.removalGrounds ?? []).map((each) => ({
              key: each.key,
              label: inLanguage(each.label),
              onChoose: () => setGround(each),
            }))}
          />
          <div className={styles.buttons}>
            <Button onPress={onClose}>{t('screens:form.cancel')}</Button>
          </div>
        </>
      ) : (
        <RemoveConfirm benchId={benchId} ground={ground} onBack={() => setGround(undefined)} />
      )}
    </Dialog>
  );
};

interface RemoveConfirmProps {
  readonly benchId: BenchId;
  readonly ground: Ground;
  onBack(): void;
}

const RemoveConfirm = ({ benchId, ground, onBack }: RemoveConfirmProps) => {
  const { t, inLanguage } = useText();
  const [note, setNote] = useState('');
  const remove = useStationCommand('device.remove');
  const act = async (): Promise<void> => {
    const words = note.trim();
    const result = await remove.run({
      benchId,
      ground: ground.key,
      ...(words === '' ? {} : { note: words }),
    });
    if (result.ok) navigate({ screen: 'tag', benchId, kind: 'quarantine' });
  };
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command') return false;
    if (meaning.command === 'confirm') void act();
    else if (meaning.command === 'back') onBack();
    else return false;
    return true;
  });
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    void act();
  };
  return (
    <form className={styles.form} onSubmit={submit}>
      <p className={styles.large}>{inLanguage(ground.reason)}</p>
      <TextInput
        label={t(ground.noteNeeded ? 'screens:device.removeNoteNeeded' : 'screens:device.removeNote')}
        value={note}
        onChange={setNote}
        error={remove.error?.field === 'note' ? remove.error.sentence : undefined}
        autoFocus
      />
      <p>{t('screens:device.removeHint')}</p>
      <AlertLine sentence={remove.error?.field === 'note' ? undefined : remove.error?.sentence} />
      <div className={styles.buttons}>
        <Button onPress={onBack}>{t('screens:device.removeOther')}</Button>
        <Button type="submit" look="remove" icon="stop" isRunning={remove.isRunning}>
          {t('screens:device.removeConfirm')}
        </Button>
      </div>
    </form>
  );
};
