/** Says plainly why the person at the window cannot sign, and what to do. */
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './signing.module.css';
import type { SigningFault } from './signing-fault.ts';

export const SigningFaultNote = ({ fault }: { readonly fault: SigningFault }) => {
  const words = useWords(fault);
  return (
    <section className={styles.fault}>
      <h2 className={styles.title}>
        <Icon name="person" /> {words.title}
      </h2>
      <p>{words.hint}</p>
    </section>
  );
};

const useWords = (fault: SigningFault): { readonly title: string; readonly hint: string } => {
  const { t, dateText } = useText();
  switch (fault.kind) {
    case 'not signed in':
      return { title: t('walk:sign.notSignedIn'), hint: t('walk:sign.notSignedInHint') };
    case 'not designated':
      return { title: t('walk:sign.notDesignated', fault), hint: t('walk:sign.notDesignatedHint', fault) };
    case 'not yet designated':
      return {
        title: t('walk:sign.notDesignated', fault),
        hint: t('walk:sign.notYet', { date: dateText(fault.date) }),
      };
    case 'training expired':
      return {
        title: t('walk:sign.notDesignated', fault),
        hint: t('walk:sign.expired', { date: dateText(fault.date) }),
      };
    case 'out of scope':
      return { title: t('walk:sign.notDesignated', fault), hint: t('walk:sign.outOfScope') };
    case 'no PIN':
      return { title: t('walk:sign.noPin', fault), hint: t('walk:sign.noPinHint') };
    case 'answers by others':
      return {
        title: t('walk:sign.notDesignated', fault),
        hint: t('walk:sign.others', { count: fault.count }),
      };
  }
};
