/** A button that opens a fleet list. */
import { useRef } from 'react';
import { Button } from '../../components/button.tsx';

export interface ChooseListButtonProps {
  readonly label: string;
  readonly look?: 'primary' | 'plain';
  onFile(file: File): void;
}

export const ChooseListButton = ({ label, look = 'plain', onFile }: ChooseListButtonProps) => {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <Button icon="register" look={look} onPress={() => input.current?.click()}>
        {label}
      </Button>
      <input
        ref={input}
        type="file"
        hidden
        accept=".csv,.txt,.tsv,.xlsx,text/csv"
        onChange={({ target }) => {
          const [file] = target.files ?? [];
          target.value = '';
          if (file !== undefined) onFile(file);
        }}
      />
    </>
  );
};
