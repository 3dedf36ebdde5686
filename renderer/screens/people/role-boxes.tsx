/** What a person does here: any of the roles. */
import { roles as allRoles, type Role } from '../../../src/domain/person.ts';
import { CheckBox } from '../../components/check-box.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './people.module.css';

export interface RoleBoxesProps {
  readonly roles: readonly Role[];
  onChange(roles: readonly Role[]): void;
}

export const RoleBoxes = ({ roles, onChange }: RoleBoxesProps) => {
  const { t } = useText();
  return (
    <fieldset>
      <legend className={styles.name}>{t('screens:setup.roles')}</legend>
      <div className={styles.boxes}>
        {allRoles.map((role) => (
          <CheckBox
            key={role}
            isSelected={roles.includes(role)}
            onChange={(isIn) => onChange(isIn ? [...roles, role] : roles.filter((other) => other !== role))}
          >
            {t(`screens:role.${role}`)}
          </CheckBox>
        ))}
      </div>
    </fieldset>
  );
};
