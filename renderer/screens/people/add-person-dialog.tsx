/** Adds a person: name, badge, roles. */
import { type FormEvent, useState } from 'react';
import type { Role } from '../../../src/domain/person.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { DialogActions } from '../../components/dialog-actions.tsx';
import { faultsOf, hasFaults } from '../../components/form-faults.ts';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { useStationCommand } from '../../station/hooks.ts';
import styles from './people.module.css';
import { RoleBoxes } from './role-boxes.tsx';

export const AddPersonDialog = ({ onClose }: { onClose(): void }) => {
  const { t } = useText();
  return (
    <Dialog title={t('screens:setup.addPerson')} onClose={onClose}>
      <AddPersonForm onClose={onClose} />
    </Dialog>
  );
};

const AddPersonForm = ({ onClose }: { onClose(): void }) => {
  const { t } = useText();
  const [name, setName] = useState('');
  const [badge, setBadge] = useState('');
  const [roles, setRoles] = useState<readonly Role[]>(['user']);
  const [wasTried, setTried] = useState(false);
  const add = useStationCommand('person.add');

  useScanHandler(({ meaning, text }) => {
    if (meaning.meaning === 'command') return false;
    setBadge(text);
    return true;
  });

  const own = {
    name: name.trim() === '' ? t('screens:form.needed') : undefined,
    badge: /^[\x21-\x7e]{4,40}$/.test(badge.trim()) ? undefined : t('screens:form.badgeShape'),
    roles: roles.length === 0 ? t('screens:setup.roleNeeded') : undefined,
  };
  const faults: Partial<typeof own> = wasTried ? own : {};
  const refused = faultsOf(add.error);
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setTried(true);
    if (hasFaults(own)) return;
    if ((await add.run({ name, badge, roles: [...roles] })).ok) onClose();
  };
  return (
    <form className={styles.form} onSubmit={(event) => void submit(event)}>
      <TextInput
        label={t('screens:setup.name')}
        value={name}
        onChange={setName}
        error={faults.name ?? refused.at('name')}
        autoFocus
      />
      <TextInput
        label={t('screens:setup.badge')}
        value={badge}
        onChange={setBadge}
        error={faults.badge ?? refused.at('badge')}
      />
      <RoleBoxes roles={roles} onChange={setRoles} />
      <AlertLine sentence={faults.roles ?? refused.rest()} />
      <DialogActions isRunning={add.isRunning} onCancel={onClose} />
    </form>
  );
};
