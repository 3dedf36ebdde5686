/** What should have been answered to a check, in the form that its kind of check takes. */
import { useState } from 'react';
import type { WantedCorrection } from '../../../src/domain/amendment.ts';
import type { Answer } from '../../../src/domain/answer.ts';
import { parseLength, toUnit } from '../../../src/domain/length.ts';
import { type MarkingState, markingStates } from '../../../src/domain/marking.ts';
import type { ConditionCheck } from '../../../src/domain/procedure.ts';
import { Choice } from '../../components/choice.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import type { AnswerTask } from './correction-dialog.tsx';
import { emptyFinding, type FindingDraft, findingDraft, findingsFrom } from './finding-draft.ts';
import { FindingInputs } from './finding-inputs.tsx';

export interface AnswerInputProps {
  readonly task: AnswerTask;
  /** Told nothing while the answer is not whole. */
  onChange(wanted: WantedCorrection | undefined): void;
}

export const AnswerInput = ({ task, onChange }: AnswerInputProps) => {
  const { check, answer } = task;
  const say = (now: Answer | undefined): void =>
    onChange(now === undefined ? undefined : { field: 'answer', now });
  switch (check.kind) {
    case 'marking':
      return <StateInput answer={answer} onChange={say} />;
    case 'payout-length':
      return <LengthInput answer={answer} onChange={say} />;
    case 'condition':
      return <ConditionInput check={check} answer={answer} onChange={say} />;
  }
};

interface InputProps {
  readonly answer: Answer;
  onChange(answer: Answer | undefined): void;
}

const StateInput = ({ answer, onChange }: InputProps) => {
  const { t } = useText();
  const [state, setState] = useState<MarkingState | undefined>(
    answer.kind === 'marking' ? answer.state : undefined,
  );
  return (
    <Choice
      label={t('corrections:answer.state')}
      value={state}
      options={markingStates.map((each) => ({ value: each, label: t(`walk:marking.${each}`) }))}
      onChange={(next) => {
        setState(next);
        onChange({ kind: 'marking', state: next });
      }}
    />
  );
};

const LengthInput = ({ answer, onChange }: InputProps) => {
  const { t, lengthUnit } = useText();
  const [typed, setTyped] = useState(
    answer.kind === 'length' ? String(Math.round(toUnit(answer.confirmedM, lengthUnit) * 1000) / 1000) : '',
  );
  return (
    <TextInput
      label={t('corrections:answer.length', { unit: lengthUnit })}
      inputMode="decimal"
      value={typed}
      onChange={(next) => {
        setTyped(next);
        const confirmedM = parseLength(next, lengthUnit);
        onChange(confirmedM === undefined ? undefined : { kind: 'length', confirmedM });
      }}
      autoFocus
    />
  );
};

const ConditionInput = ({ check, answer, onChange }: InputProps & { readonly check: ConditionCheck }) => {
  const { t, lengthUnit } = useText();
  const [kind, setKind] = useState<'good' | 'defects'>(answer.kind === 'defects' ? 'defects' : 'good');
  const [findings, setFindings] = useState<readonly FindingDraft[]>(
    answer.kind === 'defects'
      ? answer.findings.map((finding) => findingDraft(finding, lengthUnit))
      : [emptyFinding(check)],
  );
  const say = (nextKind: 'good' | 'defects', next: readonly FindingDraft[]): void => {
    setKind(nextKind);
    setFindings(next);
    const whole = findingsFrom(next, check, lengthUnit);
    const defects = whole === undefined ? undefined : ({ kind: 'defects', findings: whole } as const);
    onChange(nextKind === 'good' ? { kind: 'good' } : defects);
  };
  return (
    <>
      <Choice
        label={t('corrections:now')}
        value={kind}
        options={[
          { value: 'good', label: t('corrections:answer.good') },
          { value: 'defects', label: t('corrections:answer.defects') },
        ]}
        onChange={(next) => say(next, findings)}
      />
      {kind === 'defects' ? (
        <FindingInputs check={check} findings={findings} onChange={(next) => say('defects', next)} />
      ) : null}
    </>
  );
};
