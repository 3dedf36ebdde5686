/** What the window does with a scan that neither a screen nor a dialog wants: sign in, open the device, go to a screen, or ask. */
import { useState } from 'react';
import type { BenchId } from '../../src/domain/brand.ts';
import { placeOf } from '../../src/domain/command-symbol.ts';
import { AlertLine } from '../components/alert-line.tsx';
import { Dialog } from '../components/dialog.tsx';
import { useText } from '../i18n/text.ts';
import { navigate, routeOf } from '../navigation/route.ts';
import { useStationCommand } from '../station/hooks.ts';
import { BindCodeDialog } from './bind-code-dialog.tsx';
import { FreshBenchIdDialog } from './fresh-bench-id-dialog.tsx';
import { MalformedDialog } from './malformed-dialog.tsx';
import { OldTagDialog } from './old-tag-dialog.tsx';
import { PlaceDialog } from './place-dialog.tsx';
import { isPast, isUnproved, type ScanMeaning, useScanHandler } from './scan.ts';
import { SuggestionDialog } from './suggestion-dialog.tsx';
import { UnknownCodeDialog } from './unknown-code-dialog.tsx';
import { WorthlessTagDialog } from './worthless-tag-dialog.tsx';

type Question =
  | Exclude<ScanMeaning, { meaning: 'command' | 'badge' }>
  | { readonly meaning: 'bind'; readonly text: string };

export const WindowScans = () => {
  const { t } = useText();
  const [question, setQuestion] = useState<Question>();
  const signIn = useStationCommand('session.sign-in');
  const prove = useStationCommand('tag.prove');

  useScanHandler(({ meaning, text }) => {
    if (meaning.meaning !== 'device' || !isUnproved(meaning.tag)) return false;
    if (!isTagScreenOf(meaning.device.benchId)) void prove.run({ text });
    return false;
  }, 'witness');

  useScanHandler(({ meaning }) => {
    switch (meaning.meaning) {
      case 'command': {
        const place = placeOf(meaning.command);
        if (place === undefined) return false;
        setQuestion(undefined);
        navigate({ screen: place });
        return true;
      }
      case 'badge':
        void signIn.run({ badge: meaning.badge });
        return true;
      case 'device':
        if (isPast(meaning.tag)) setQuestion(meaning);
        else {
          setQuestion(undefined);
          navigate({ screen: 'device', benchId: meaning.device.benchId });
        }
        return true;
      default:
        setQuestion(meaning);
        return true;
    }
  }, 'window');

  const close = (): void => setQuestion(undefined);

  if (signIn.error !== undefined) {
    return (
      <Dialog title={t('screens:errors.signIn')} onClose={signIn.clear}>
        <AlertLine sentence={signIn.error.sentence} />
      </Dialog>
    );
  }
  if (prove.error !== undefined && prove.error.code !== 'sign-in-needed') {
    return (
      <Dialog title={t('screens:scan.notProved')} onClose={prove.clear}>
        <AlertLine sentence={prove.error.sentence} />
      </Dialog>
    );
  }
  switch (question?.meaning) {
    case undefined:
      return null;
    case 'device':
      return isPast(question.tag) ? (
        <OldTagDialog device={question.device} tag={question.tag} onClose={close} />
      ) : null;
    case 'place':
      return <PlaceDialog code={question.code} onClose={close} />;
    case 'worthless tag':
      return <WorthlessTagDialog state={question.state} onClose={close} />;
    case 'bench ID not registered':
      return <FreshBenchIdDialog benchId={question.benchId} onClose={close} />;
    case 'suggestion':
      return <SuggestionDialog suggestion={question} onClose={close} />;
    case 'malformed':
      return <MalformedDialog sentence={question.sentence} onClose={close} />;
    case 'unknown':
      return (
        <UnknownCodeDialog
          code={question.text}
          data={question.data}
          onBind={() => setQuestion({ meaning: 'bind', text: question.text })}
          onClose={close}
        />
      );
    case 'bind':
      return <BindCodeDialog code={question.text} onClose={close} />;
  }
};

/** That screen proves its tag itself, and says so large. */
const isTagScreenOf = (benchId: BenchId): boolean => {
  const route = routeOf(window.location.hash);
  return route.screen === 'tag' && route.benchId === benchId;
};
