/** The walk of an inspection: one check a screen, the drawing beside it, and what was found so far. */
import { useCallback, useEffect, useState } from 'react';
import { metres } from '../../../src/domain/brand.ts';
import type { Check } from '../../../src/domain/procedure.ts';
import type { InspectionView } from '../../../src/station/views.ts';
import { useCameraDesk } from '../../camera/camera-desk.ts';
import { Button } from '../../components/button.tsx';
import { SrlDrawing } from '../../drawing/srl-drawing.tsx';
import { useText } from '../../i18n/text.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { BreakOffDialog } from './break-off-dialog.tsx';
import { CheckBody } from './check-body.tsx';
import { CheckPictures } from './check-pictures.tsx';
import { DeviceLine } from './device-line.tsx';
import { KeyCap } from './key-cap.tsx';
import { ReasonsSoFar } from './reasons-so-far.tsx';
import { letterOf } from './shortcut.ts';
import { useShortcuts } from './use-shortcuts.ts';
import { useWalk } from './use-walk.ts';
import { VerdictPage } from './verdict-page.tsx';
import styles from './walk.module.css';
import { reasonsOf } from './walk-order.ts';
import { WalkProgress } from './walk-progress.tsx';

export interface WalkProps {
  readonly inspection: InspectionView;
  /** The checks that apply, in the order of the walk. */
  readonly checks: readonly Check[];
}

export const Walk = ({ inspection, checks }: WalkProps) => {
  const { t, lengthText, inLanguage } = useText();
  const [isBreakingOff, setBreakingOff] = useState(false);
  const desk = useCameraDesk();
  const pictureOf = useCallback(
    (check: Check) => ({
      inspection: inspection.inspection,
      check: check.key,
      title: inLanguage(check.title),
    }),
    [inspection.inspection, inLanguage],
  );
  const walk = useWalk(inspection, checks, (check) => desk.keepPictureOfCheck(pictureOf(check)));
  useShortcuts();
  useScanHandler(({ meaning }) => meaning.meaning === 'command' && walk.command(meaning.command));
  const { check } = walk;
  useEffect(() => {
    desk.aimAt(check === undefined ? undefined : pictureOf(check));
    return () => desk.aimAt(undefined);
  }, [desk, check, pictureOf]);
  const facts = {
    loadIndicatorFitted: checks.some(({ appliesWhen }) => appliesWhen === 'load-indicator-fitted'),
    ratedLength: lengthText(inspection.device.ratedLengthM),
  };

  return (
    <div className={styles.walk}>
      <WalkProgress checks={checks} inspection={inspection} place={walk.place} onGo={walk.go} />
      {check === undefined ? (
        <VerdictPage
          inspection={inspection}
          checks={checks}
          onGo={(key) => walk.go({ at: 'check', key })}
          onBack={() => walk.step(-1)}
        />
      ) : (
        <div className={styles.screen}>
          <div className={styles.drawing}>
            <SrlDrawing zone={check.zone} facts={facts} />
          </div>
          <CheckBody
            check={check}
            inspection={inspection}
            ratedLengthM={metres(inspection.device.ratedLengthM)}
            draft={walk.draft}
            isSending={walk.isSending}
            fault={walk.fault}
            onInput={walk.input}
            onCommand={walk.command}
          />
          <aside className={styles.side}>
            <DeviceLine device={inspection.device} />
            {inspection.reinspection === undefined ? null : (
              <strong className={styles.blind}>{t('schedule:blind.note')}</strong>
            )}
            <ReasonsSoFar reasons={reasonsOf(inspection)} />
            <div className={styles.room} />
            <CheckPictures
              inspection={inspection.inspection}
              check={check}
              onTake={() => walk.command('picture')}
            />
            <Button look="quiet" onPress={() => setBreakingOff(true)}>
              {t('walk:actions.breakOff')}
            </Button>
            <div className={styles.steps}>
              <Button
                onPress={() => walk.step(-1)}
                isDisabled={walk.place.at === 'check' && walk.place.key === inspection.checks[0]}
              >
                <span className={styles.key}>
                  <KeyCap>{letterOf.back}</KeyCap> {t('walk:actions.back')}
                </span>
              </Button>
              <Button onPress={() => walk.step(1)}>
                <span className={styles.key}>
                  {t('walk:actions.next')} <KeyCap>{letterOf.next}</KeyCap>
                </span>
              </Button>
            </div>
          </aside>
        </div>
      )}
      {isBreakingOff && <BreakOffDialog inspection={inspection} onClose={() => setBreakingOff(false)} />}
    </div>
  );
};
