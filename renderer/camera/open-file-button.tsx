/** A button that opens a picture file. */
import { useRef } from 'react';
import { Button } from '../components/button.tsx';
import { useText } from '../i18n/text.ts';

export interface OpenFileButtonProps {
  readonly label?: string;
  onFile(file: File): void;
}

export const OpenFileButton = ({ label, onFile }: OpenFileButtonProps) => {
  const { t } = useText();
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <Button icon="picture" onPress={() => input.current?.click()}>
        {label ?? t('camera:openFile')}
      </Button>
      <input
        ref={input}
        type="file"
        hidden
        accept="image/*,.heic,.heif"
        onChange={({ target }) => {
          const [file] = target.files ?? [];
          target.value = '';
          if (file !== undefined) onFile(file);
        }}
      />
    </>
  );
};
