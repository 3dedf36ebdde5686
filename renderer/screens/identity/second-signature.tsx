/** The second person signs what they say of the device. */
import { useState } from 'react';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { BenchId } from '../../../src/domain/brand.ts';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import { Signature } from './signature.tsx';

export interface SecondSignatureProps {
  readonly identityCase: number;
  readonly candidate: BenchId;
  readonly answer: 'yes' | 'no';
  /** Who signs. */
  readonly name: string;
  onBack(): void;
}

export const SecondSignature = ({ identityCase, candidate, answer, name, onBack }: SecondSignatureProps) => {
  const { t } = useText();
  const [why, setWhy] = useState('');
  const confirm = useStationCommand('identity.confirm');
  const disagree = useStationCommand('identity.disagree');
  const benchId = formatBenchId(candidate);
  const isYes = answer === 'yes';
  return (
    <Signature
      name={name}
      statement={t(isYes ? 'screens:identity.signYes' : 'screens:identity.signNo', { benchId })}
      isRunning={confirm.isRunning || disagree.isRunning}
      error={(confirm.error ?? disagree.error)?.sentence}
      onSign={(pin) =>
        isYes
          ? confirm.run({ identityCase, candidate, lookedAtDevice: true, pin })
          : disagree.run({ identityCase, why: why.trim(), pin })
      }
      onBack={onBack}
    >
      {isYes ? null : <TextInput label={t('screens:identity.why')} value={why} onChange={setWhy} />}
    </Signature>
  );
};
