/** Gives a person another name, badge or other roles, with the reason. */
import { type FormEvent, useState } from 'react';
import { AlertLine } from '../../components/alert-line.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { DialogActions } from '../../components/dialog-actions.tsx';
import { faultsOf, hasFaults } from '../../components/form-faults.ts';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { useStationCommand } from '../../station/hooks.ts';
import styles from './people.module.css';
import type { PersonDialogProps } from './person-actions.tsx';
import { RoleBoxes } from './role-boxes.tsx';

export const ChangePersonDialog = ({ person, onClose }: PersonDialogProps) => {
  const { t } = useText();
  return (
    <Dialog title={t('people:dialog.change', { name: person.name })} onClose={onClose}>
      <ChangePersonForm person={person} onClose={onClose} />
    </Dialog>
  );
};

const ChangePersonForm = ({ person, onClose }: PersonDialogProps) => {
  const { t } = useText();
  const [name, setName] = useState(person.name);
  const [badge, setBadge] = useState(person.badge);
  const [roles, setRoles] = useState(person.roles);
  const [because, setBecause] = useState('');
  const [wasTried, setTried] = useState(false);
  const change = useStationCommand('person.change');

  useScanHandler(({ meaning, text }) => {
    if (meaning.meaning === 'command') return false;
    setBadge(text);
    return true;
  });

  const needed = (value: string): string | undefined =>
    value.trim() === '' ? t('screens:form.needed') : undefined;
  const own = {
    name: needed(name),
    badge: /^[\x21-\x7e]{4,40}$/.test(badge.trim()) ? undefined : t('screens:form.badgeShape'),
    roles: roles.length === 0 ? t('screens:setup.roleNeeded') : undefined,
    because: needed(because),
  };
  const faults: Partial<typeof own> = wasTried ? own : {};
  const refused = faultsOf(change.error);
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setTried(true);
    if (hasFaults(own)) return;
    const { personId } = person;
    if ((await change.run({ personId, name, badge, roles, because })).ok) onClose();
  };
  return (
    <form className={styles.form} onSubmit={(event) => void submit(event)}>
      <p>{t('people:dialog.changeText')}</p>
      <TextInput
        label={t('screens:setup.name')}
        value={name}
        onChange={setName}
        error={faults.name ?? refused.at('name')}
        autoFocus
      />
      <TextInput
        label={t('people:form.badge')}
        value={badge}
        onChange={setBadge}
        error={faults.badge ?? refused.at('badge')}
      />
      <RoleBoxes roles={roles} onChange={(chosen) => setRoles([...chosen])} />
      <TextInput
        label={t('people:form.because')}
        hint={t('people:form.becauseHint')}
        value={because}
        onChange={setBecause}
        error={faults.because ?? refused.at('because')}
      />
      <AlertLine sentence={faults.roles ?? refused.rest()} />
      <DialogActions isRunning={change.isRunning} onCancel={onClose} />
    </form>
  );
};
