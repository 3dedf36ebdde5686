/** Opens the tag for printing, where the station has no printer of its own. */
import { Button } from '../../components/button.tsx';
import { useScanHandler } from '../../scan/scan.ts';

export interface OpenTagProps {
  readonly label: string;
  /** True where that is what is to be done next. */
  readonly isNext: boolean;
  onOpen(): void;
}

export const OpenTag = ({ label, isNext, onOpen }: OpenTagProps) => {
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command' || meaning.command !== 'confirm') return false;
    onOpen();
    return true;
  });
  return (
    <div>
      <Button
        look={isNext ? 'primary' : 'plain'}
        size={isNext ? 'large' : 'normal'}
        icon="tag"
        autoFocus={isNext}
        onPress={onOpen}
      >
        {label}
      </Button>
    </div>
  );
};
