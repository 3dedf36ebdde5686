/** The other devices of the system in which a device fell: scanned, or typed and looked up. */
import { useState } from 'react';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { BenchId } from '../../../src/domain/brand.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { call } from '../../station/client.ts';
import styles from './held.module.css';

export interface LinkedInputProps {
  readonly linked: readonly BenchId[];
  onChange(linked: readonly BenchId[]): void;
  readonly error: string | undefined;
}

export const LinkedInput = ({ linked, onChange, error }: LinkedInputProps) => {
  const { t } = useText();
  const [text, setText] = useState('');
  const [fault, setFault] = useState<string>();
  const add = async (): Promise<void> => {
    const found = await call('scan.interpret', { text, typed: true });
    if (found.ok && found.output.meaning === 'device') {
      onChange([...new Set([...linked, found.output.device.benchId])]);
      setText('');
      setFault(undefined);
    } else setFault(t('screens:scan.unknown.title'));
  };
  return (
    <fieldset className={styles.group}>
      <legend className={styles.label}>{t('held:fall.linked')}</legend>
      <p className={styles.soft}>{t('held:fall.linkedHint')}</p>
      <div className={styles.buttons}>
        {linked.map((benchId) => (
          <Button
            key={benchId}
            icon="cross"
            onPress={() => onChange(linked.filter((each) => each !== benchId))}
          >
            {t('held:record.remove', { name: formatBenchId(benchId) })}
          </Button>
        ))}
      </div>
      <TextInput label={t('held:fall.addLinked')} value={text} onChange={setText} error={fault} />
      <div className={styles.buttons}>
        <Button icon="plus" isDisabled={text.trim() === ''} onPress={() => void add()}>
          {t('held:fall.add')}
        </Button>
      </div>
      <AlertLine sentence={error} />
    </fieldset>
  );
};
