/** The verdict of an inspection, with every reason or every open check, and the signature under it. */
import type { Check } from '../../../src/domain/procedure.ts';
import type { InspectionView } from '../../../src/station/views.ts';
import { Button } from '../../components/button.tsx';
import { SrlDrawing } from '../../drawing/srl-drawing.tsx';
import { useText } from '../../i18n/text.ts';
import { BlindNote } from './blind-note.tsx';
import { DeviceLine } from './device-line.tsx';
import { InspectionEvidence } from './inspection-evidence.tsx';
import { KeyCap } from './key-cap.tsx';
import { OpenChecks } from './open-checks.tsx';
import { ReasonList } from './reason-list.tsx';
import { ReasonsSoFar } from './reasons-so-far.tsx';
import { letterOf } from './shortcut.ts';
import { SignedNote } from './signed-note.tsx';
import { Signing } from './signing.tsx';
import styles from './verdict-page.module.css';
import { VerdictWord } from './verdict-word.tsx';

export interface VerdictPageProps {
  readonly inspection: InspectionView;
  readonly checks: readonly Check[];
  /** Goes to a check; absent where nothing can be changed any more. */
  onGo?(checkKey: string): void;
  onBack?(): void;
}

export const VerdictPage = ({ inspection, checks, onGo, onBack }: VerdictPageProps) => {
  const { t } = useText();
  const { verdict } = inspection;
  return (
    <div className={styles.page}>
      <section className={styles.verdict}>
        <VerdictWord verdict={verdict}>
          <InspectionEvidence inspection={inspection} checks={checks} />
        </VerdictWord>
        {verdict.kind === 'incomplete' && <OpenChecks verdict={verdict} checks={checks} onGo={onGo} />}
        {verdict.kind === 'pass' && (
          <div className={styles.drawing}>
            <SrlDrawing />
          </div>
        )}
        {verdict.kind === 'remove from service' && <ReasonList reasons={verdict.reasons} />}
      </section>
      <aside className={styles.side}>
        <div className={styles.top}>
          <DeviceLine device={inspection.device} />
          {onBack !== undefined && (
            <Button onPress={onBack}>
              <span className={styles.key}>
                <KeyCap>{letterOf.back}</KeyCap> {t('walk:actions.back')}
              </span>
            </Button>
          )}
        </div>
        <BlindNote inspection={inspection} />
        {inspection.signed === undefined ? (
          <Signing inspection={inspection} />
        ) : (
          <SignedNote inspection={inspection} />
        )}
        {verdict.kind === 'incomplete' && <ReasonsSoFar reasons={verdict.reasons} />}
      </aside>
    </div>
  );
};
