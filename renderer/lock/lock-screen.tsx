/** Who the window belongs to, and nothing else: a scanned or typed badge goes on, that of somebody else signs them in. */
import { type FormEvent, useLayoutEffect, useState } from 'react';
import { Dialog as AriaDialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { AlertLine } from '../components/alert-line.tsx';
import { Button } from '../components/button.tsx';
import { Icon } from '../components/icon.tsx';
import { TextInput } from '../components/text-input.tsx';
import { useText } from '../i18n/text.ts';
import { LookSwitches } from '../navigation/header.tsx';
import { useScanHandler } from '../scan/scan.ts';
import { useStationCommand } from '../station/hooks.ts';
import type { ReadyStation } from '../station/status.ts';
import styles from './lock.module.css';
import { hideWindow } from './window-locked.ts';

export const LockScreen = ({ lockedFor }: { readonly lockedFor: NonNullable<ReadyStation['lockedFor']> }) => {
  const { t } = useText();
  const signIn = useStationCommand('session.sign-in');
  const [typed, setTyped] = useState('');
  const [isOther, setOther] = useState(false);
  useLayoutEffect(hideWindow, []);
  useScanHandler(({ meaning }) => {
    const isBadge = meaning.meaning === 'badge';
    setOther(!isBadge && meaning.meaning !== 'command');
    if (isBadge) void signIn.run({ badge: meaning.badge });
    return true;
  }, 'lock');
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    setOther(false);
    if (typed.trim() !== '') void signIn.run({ badge: typed.trim() });
    setTyped('');
  };
  const names = {
    name: lockedFor.name,
    roles: lockedFor.roles.map((role) => t(`screens:role.${role}`)).join(', '),
  };
  return (
    <ModalOverlay className={styles.ground ?? ''} isOpen isKeyboardDismissDisabled data-lock="">
      <Modal className={styles.modal ?? ''}>
        <AriaDialog className={styles.dialog ?? ''}>
          <div className={styles.switches}>
            <LookSwitches />
          </div>
          <div className={styles.head}>
            <Icon name="lock" large />
            <Heading slot="title" className={styles.title ?? ''}>
              {t('screens:lock.title')}
            </Heading>
          </div>
          <p className={styles.who}>
            <Icon name="person" />
            <span>
              <strong>{names.name}</strong>, {names.roles}
            </span>
          </p>
          <p className={styles.text}>{t('screens:lock.goOn', names)}</p>
          <p className={styles.text}>{t('screens:lock.other')}</p>
          <form className={styles.form} onSubmit={submit}>
            <TextInput label={t('screens:lock.badge')} value={typed} onChange={setTyped} autoFocus />
            <Button look="primary" type="submit" isRunning={signIn.isRunning}>
              {t('screens:lock.unlock')}
            </Button>
          </form>
          <AlertLine sentence={isOther ? t('screens:lock.onlyBadge') : signIn.error?.sentence} />
        </AriaDialog>
      </Modal>
    </ModalOverlay>
  );
};
