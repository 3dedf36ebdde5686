/** A button that opens a checkpoint that was kept elsewhere. */
import { useRef } from 'react';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';

export const CheckpointFileButton = ({ onText }: { onText(text: string): void }) => {
  const { t } = useText();
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <Button onPress={() => input.current?.click()}>{t('ledger:verifyWithKept')}</Button>
      <input
        ref={input}
        type="file"
        hidden
        accept=".checkpoint,.txt"
        onChange={({ target }) => {
          const [file] = target.files ?? [];
          target.value = '';
          void file?.slice(0, longestCheckpoint).text().then(onText);
        }}
      />
    </>
  );
};

/** Bytes that are read: a checkpoint has a few hundred, and what is longer is none. */
const longestCheckpoint = 20_000;
