/** Everything about one check: its words, what is on record, the answer that it has, and the way to answer it. */
import type { Metres } from '../../../src/domain/brand.ts';
import type { CommandName } from '../../../src/domain/command-symbol.ts';
import type { Message } from '../../../src/domain/message.ts';
import type { Check } from '../../../src/domain/procedure.ts';
import type { InspectionView } from '../../../src/station/views.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import type { Draft, DraftInput } from './answer-draft.ts';
import { AnswerRow } from './answer-row.tsx';
import styles from './check-body.module.css';
import { CheckText } from './check-text.tsx';
import { DefectPicker } from './defect-picker.tsx';
import { DiameterEntry } from './diameter-entry.tsx';
import { GivenAnswer } from './given-answer.tsx';
import { LengthEntry } from './length-entry.tsx';
import { lifelineFactsOf } from './lifeline-facts.ts';
import { RecordedElement } from './recorded-element.tsx';
import { RecordedMarking } from './recorded-marking.tsx';
import { stateWithVerdict } from './walk-order.ts';

export interface CheckBodyProps {
  readonly check: Check;
  readonly inspection: InspectionView;
  readonly ratedLengthM: Metres;
  readonly draft: Draft;
  readonly isSending: boolean;
  /** What did not work, in a sentence. */
  readonly fault: string | undefined;
  onInput(input: DraftInput): void;
  onCommand(command: CommandName): void;
}

export const CheckBody = ({
  check,
  inspection,
  ratedLengthM,
  draft,
  isSending,
  fault,
  onInput,
  onCommand,
}: CheckBodyProps) => {
  const answered = inspection.answers[check.key];
  const isQuestion = draft.stage === 'question';
  return (
    <article className={styles.body}>
      <CheckText
        check={check}
        criterion={criterionOf(check, inspection)}
        number={inspection.checks.indexOf(check.key) + 1}
        count={inspection.checks.length}
        isShort={!isQuestion}
      />
      {check.kind === 'marking' && <RecordedElement element={check.element} marking={inspection.marking} />}
      {check.kind === 'condition' && check.zone === 'marking' && isQuestion && (
        <RecordedMarking marking={inspection.marking} />
      )}
      {isQuestion && <div className={styles.room} />}
      {answered !== undefined && isQuestion && fault === undefined && (
        <GivenAnswer
          check={check}
          answered={answered}
          isLookAgain={stateWithVerdict(check, inspection) === 'look again'}
        />
      )}
      <AlertLine sentence={fault} />
      {isQuestion && (
        <AnswerRow
          check={check}
          ratedLengthM={ratedLengthM}
          hasMinimum={inspection.lifelineMinimumDiameterMm !== undefined}
          given={answered?.answer}
          isSending={isSending}
          onInput={onInput}
        />
      )}
      {draft.stage === 'defects' && check.kind === 'condition' && (
        <DefectPicker
          check={check}
          draft={draft}
          ratedLengthM={ratedLengthM}
          isSending={isSending}
          onInput={onInput}
        />
      )}
      {draft.stage === 'length' && (
        <LengthEntry
          typed={draft.typed}
          ratedLengthM={ratedLengthM}
          isSending={isSending}
          onInput={onInput}
          onCommand={onCommand}
        />
      )}
      {draft.stage === 'diameters' && (
        <DiameterEntry
          draft={draft}
          facts={lifelineFactsOf(inspection)}
          isSending={isSending}
          onInput={onInput}
          onCommand={onCommand}
        />
      )}
    </article>
  );
};

/** A diameter that no minimum of the manufacturer holds has its own. */
const criterionOf = (check: Check, { lifelineMinimumDiameterMm }: InspectionView): Message =>
  check.kind === 'lifeline-diameter' && lifelineMinimumDiameterMm === undefined
    ? check.criterionWithoutMinimum
    : check.criterion;
