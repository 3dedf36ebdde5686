/** A code that this station does not know: register a device with it, bind it to one, or nothing. */

import { longestCode, shortestCode } from '../../src/domain/device.ts';
import type { MarkingData } from '../../src/domain/marking-data.ts';
import { Dialog } from '../components/dialog.tsx';
import { NumberedChoices } from '../components/numbered-choices.tsx';
import { useText } from '../i18n/text.ts';
import { navigate } from '../navigation/route.ts';
import { isBindable, shortCode } from './bindable.ts';
import { MarkingDataLines } from './marking-data-lines.tsx';

export interface UnknownCodeDialogProps {
  readonly code: string;
  readonly data: MarkingData | undefined;
  onBind(): void;
  onClose(): void;
}

export const UnknownCodeDialog = ({ code, data, onBind, onClose }: UnknownCodeDialogProps) => {
  const { t } = useText();
  const register = (): void => {
    onClose();
    navigate({ screen: 'new-device', code });
  };
  const bindable = isBindable(code, data);
  const isForSomething = bindable || data !== undefined;
  const who = (): void => {
    onClose();
    navigate({ screen: 'who' });
  };
  return (
    <Dialog title={t('screens:scan.unknown.title')} onClose={onClose}>
      <p>
        {t(isForSomething ? 'screens:scan.unknown.text' : 'screens:scan.unknown.noCode', {
          code: shortCode(code),
          least: shortestCode,
          most: longestCode,
        })}
      </p>
      <MarkingDataLines data={data} />
      <NumberedChoices
        choices={[
          ...(isForSomething
            ? [
                {
                  key: 'register',
                  label: t('screens:scan.unknown.register'),
                  isPrimary: true,
                  onChoose: register,
                },
              ]
            : []),
          ...(bindable ? [{ key: 'bind', label: t('screens:scan.unknown.bind'), onChoose: onBind }] : []),
          { key: 'who', label: t('screens:scan.unknown.who'), onChoose: who },
          { key: 'cancel', label: t('screens:scan.unknown.cancel'), onChoose: onClose },
        ]}
      />
    </Dialog>
  );
};
