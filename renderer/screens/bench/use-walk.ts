/** The state of a walk in this window: the check on the screen, the answer in the making, and what did not work. */
import { useCallback, useState } from 'react';
import { metres } from '../../../src/domain/brand.ts';
import { type CommandName, placeOf } from '../../../src/domain/command-symbol.ts';
import type { Check } from '../../../src/domain/procedure.ts';
import type { InspectionView } from '../../../src/station/views.ts';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import { type Draft, type DraftInput, question, stepDraft } from './answer-draft.ts';
import { inputOfCommand } from './command-input.ts';
import { lifelineFactsOf } from './lifeline-facts.ts';
import { firstPlace, neighbour, placeAfterAnswer, type WalkPlace } from './walk-order.ts';

export interface Walk {
  readonly place: WalkPlace;
  readonly check: Check | undefined;
  readonly draft: Draft;
  readonly fault: string | undefined;
  readonly isSending: boolean;
  go(place: WalkPlace): void;
  step(direction: -1 | 1): void;
  input(input: DraftInput): void;
  /** False where the command means nothing at this place. */
  command(command: CommandName): boolean;
}

export const useWalk = (
  inspection: InspectionView,
  checks: readonly Check[],
  takePicture: (check: Check) => void,
): Walk => {
  const { t, lengthUnit, diameterText, diameterUnit } = useText();
  const { run, isRunning } = useStationCommand('inspection.answer');
  const [place, setPlace] = useState<WalkPlace>(() => firstPlace(inspection));
  const [draft, setDraft] = useState<Draft>(question);
  const [fault, setFault] = useState<string>();
  const check = place.at === 'check' ? checks.find(({ key }) => key === place.key) : undefined;

  const go = useCallback((next: WalkPlace) => {
    setPlace(next);
    setDraft(question);
    setFault(undefined);
  }, []);

  const step = (direction: -1 | 1): void => go(neighbour(place, direction, inspection.checks));

  const input = async (given: DraftInput): Promise<void> => {
    if (check === undefined || isRunning) return;
    const {
      draft: next,
      answer,
      fault: unfit,
    } = stepDraft(draft, given, {
      check,
      ratedLengthM: metres(inspection.device.ratedLengthM),
      facts: lifelineFactsOf(inspection),
      unit: lengthUnit,
      given: inspection.answers[check.key]?.answer,
    });
    setFault(
      unfit === undefined
        ? undefined
        : t(`walk:fault.${unfit}`, {
            nominal: diameterText(inspection.lifelineDiameterMm),
            unit: diameterUnit,
          }),
    );
    if (answer === undefined) return setDraft(next);
    const result = await run({ inspection: inspection.inspection, check: check.key, answer });
    if (result.ok) go(placeAfterAnswer(check.key, result.output.inspection));
    else setFault(result.error.sentence);
  };

  const command = (name: CommandName): boolean => {
    if (name === 'picture') {
      if (check === undefined) return false;
      takePicture(check);
      return true;
    }
    if (placeOf(name) !== undefined || name === 'help') return false;
    const given = inputOfCommand(name);
    if (given === undefined) {
      step(name === 'next' ? 1 : -1);
      return true;
    }
    if (check === undefined) return false;
    void input(given);
    return true;
  };

  return {
    place,
    check,
    draft,
    fault,
    isSending: isRunning,
    go,
    step,
    input: (given) => void input(given),
    command,
  };
};
