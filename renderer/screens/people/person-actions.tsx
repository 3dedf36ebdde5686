/** What the person at the window may do about a person: an administrator everything, everybody their own PIN. */
import { type ReactNode, useState } from 'react';
import type { PersonView } from '../../../src/station/person-view.ts';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { useReadyStation } from '../../station/status.ts';
import { ChangePersonDialog } from './change-person-dialog.tsx';
import { CorrectNameDialog } from './correct-name-dialog.tsx';
import { DesignateDialog } from './designate-dialog.tsx';
import { EndDesignationDialog } from './end-designation-dialog.tsx';
import { LeaveDialog } from './leave-dialog.tsx';
import { OwnPinDialog } from './own-pin-dialog.tsx';
import styles from './people.module.css';
import { ReturnDialog } from './return-dialog.tsx';
import { SetPinDialog } from './set-pin-dialog.tsx';
import { useIsAdministrator } from './use-is-administrator.ts';

export interface PersonDialogProps {
  readonly person: PersonView;
  onClose(): void;
}

type Action =
  | 'designate'
  | 'again'
  | 'end'
  | 'change'
  | 'correctName'
  | 'setPin'
  | 'resetPin'
  | 'ownPin'
  | 'leave'
  | 'return';

export const PersonActions = ({ person }: { readonly person: PersonView }) => {
  const { t } = useText();
  const me = useReadyStation()?.person?.personId;
  const isAdministrator = useIsAdministrator();
  const [action, setAction] = useState<Action>();
  const actions: readonly Action[] = [
    ...(isAdministrator ? actionsOnOthers(person) : []),
    ...(me === person.personId && person.pinSet ? (['ownPin'] as const) : []),
  ];
  return (
    <>
      <div className={styles.buttons}>
        <Button onPress={() => navigate({ screen: 'setup' })}>{t('people:page.back')}</Button>
        {actions.map((each) => (
          <Button key={each} onPress={() => setAction(each)}>
            {t(`people:action.${each}`)}
          </Button>
        ))}
      </div>
      {action === undefined ? null : dialogOf(action, { person, onClose: () => setAction(undefined) })}
    </>
  );
};

const actionsOnOthers = ({ left, designation, pinSet }: PersonView): readonly Action[] =>
  left === undefined
    ? [
        ...(designation === undefined ? (['designate'] as const) : (['again', 'end'] as const)),
        'change',
        'correctName',
        pinSet ? 'resetPin' : 'setPin',
        'leave',
      ]
    : ['return'];

const dialogOf = (action: Action, props: PersonDialogProps): ReactNode => {
  switch (action) {
    case 'designate':
    case 'again':
      return <DesignateDialog {...props} />;
    case 'end':
      return <EndDesignationDialog {...props} />;
    case 'change':
      return <ChangePersonDialog {...props} />;
    case 'correctName':
      return <CorrectNameDialog {...props} />;
    case 'setPin':
    case 'resetPin':
      return <SetPinDialog {...props} />;
    case 'ownPin':
      return <OwnPinDialog onClose={props.onClose} />;
    case 'leave':
      return <LeaveDialog {...props} />;
    case 'return':
      return <ReturnDialog {...props} />;
  }
};
