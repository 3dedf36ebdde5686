/** A program to look at: an earlier version, or one that the product ships. */
import type { Program } from '../../../src/domain/program.ts';
import type { OutputOf } from '../../../src/station/contract.ts';
import { Button } from '../../components/button.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { useText } from '../../i18n/text.ts';
import { OtherRules } from './other-rules.tsx';
import styles from './program.module.css';
import { ProgramRules } from './program-rules.tsx';

export interface ProgramDialogProps {
  readonly program: Program;
  readonly standard: OutputOf<'program.show'>['standard'];
  onClose(): void;
}

export const ProgramDialog = ({ program, standard, onClose }: ProgramDialogProps) => {
  const { t, inLanguage } = useText();
  const { title, version } = program;
  return (
    <Dialog
      title={t('program:earlier.dialog', { title: inLanguage(title), version })}
      onClose={onClose}
      isWide
    >
      <div className={styles.shown}>
        <ProgramRules program={program} standard={standard} />
        <OtherRules program={program} />
        <div className={styles.actions}>
          <Button onPress={onClose}>{t('program:earlier.close')}</Button>
        </div>
      </div>
    </Dialog>
  );
};
