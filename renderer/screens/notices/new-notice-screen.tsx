/** A manufacturer's notice is entered or opened, held against the register, and signed; then what it means is held. */
import { useRef, useState } from 'react';
import type { OutputOf } from '../../../src/station/contract.ts';
import { base64Of } from '../../camera/base64.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { useNumberedActs } from '../../scan/use-numbered-acts.ts';
import { call } from '../../station/client.ts';
import { useSignedIn } from '../../station/status.ts';
import { MatchesView } from './matches-view.tsx';
import { draftOf, emptyNotice, faultsOfNotice, type NoticeDraft, textOf } from './notice-draft.ts';
import { NoticeForm } from './notice-form.tsx';
import styles from './notices.module.css';
import { RecordNotice } from './record-notice.tsx';

type Matches = OutputOf<'notice.preview'>;

const showNotices = (): void => navigate({ screen: 'notices' });
const showNotice = (notice: number): void => navigate({ screen: 'notice', notice });

export const NewNoticeScreen = () => {
  const { t } = useText();
  const file = useRef<HTMLInputElement>(null);
  const isSignedIn = useSignedIn() !== undefined;
  const [draft, setDraft] = useState<NoticeDraft>(emptyNotice);
  const [opened, setOpened] = useState(0);
  const [isTried, setTried] = useState(false);
  const [matches, setMatches] = useState<Matches>();
  const [sentence, setSentence] = useState<string>();
  const faults = faultsOfNotice(draft);

  const change = (next: NoticeDraft): void => {
    setDraft(next);
    setMatches(undefined);
  };
  const open = async (chosen: File): Promise<void> => {
    const read = await call('notice.read', { contentBase64: await base64Of(chosen) });
    setSentence(read.ok ? undefined : read.error.sentence);
    if (!read.ok) return;
    change(draftOf(read.output.text));
    setOpened(opened + 1);
  };
  const look = async (): Promise<void> => {
    setTried(true);
    if (faults.size > 0) return;
    const found = await call('notice.preview', { text: textOf(draft) });
    setSentence(found.ok ? undefined : found.error.sentence);
    setMatches(found.ok ? found.output : undefined);
  };

  useNumberedActs([], { confirm: matches === undefined ? () => void look() : undefined, back: showNotices });

  return (
    <div className={styles.screen}>
      <div className={styles.head}>
        <h1>{t('notices:new')}</h1>
        <div className={styles.actions}>
          <Button icon="register" onPress={() => file.current?.click()} isDisabled={!isSignedIn}>
            {t('notices:openFile')}
          </Button>
          <Button onPress={showNotices}>{t('screens:form.cancel')}</Button>
        </div>
        <input
          ref={file}
          type="file"
          hidden
          accept=".json,.csv,.xlsx,application/json,text/csv"
          onChange={({ target }) => {
            const [chosen] = target.files ?? [];
            target.value = '';
            if (chosen !== undefined) void open(chosen);
          }}
        />
      </div>
      <NoticeForm key={opened} draft={draft} faults={isTried ? faults : new Set()} onChange={change} />
      <AlertLine sentence={sentence} />
      {matches === undefined ? (
        <div className={styles.actions}>
          <Button look="primary" size="large" icon="forward" onPress={() => void look()}>
            {t('notices:look')}
          </Button>
        </div>
      ) : (
        <>
          <MatchesView matches={matches} takesFocus />
          <RecordNotice
            text={textOf(draft)}
            meant={matches.certain + matches.possible}
            onRecorded={showNotice}
          />
        </>
      )}
    </div>
  );
};
