/** Asks why a tag is printed once more, before it is. */
import type { CurrentTag } from '../../../src/domain/device.ts';
import { type ReprintReason, reprintReasonSchema } from '../../../src/domain/tag-content.ts';
import { Dialog } from '../../components/dialog.tsx';
import { NumberedChoices } from '../../components/numbered-choices.tsx';
import { useText } from '../../i18n/text.ts';

export interface ReprintDialogProps {
  readonly tag: CurrentTag;
  onReason(reason: ReprintReason): void;
  onClose(): void;
}

export const ReprintDialog = ({ tag, onReason, onClose }: ReprintDialogProps) => {
  const { t } = useText();
  const reasons = reprintReasonSchema.options.map((reason) => ({
    key: reason,
    label: t(`walk:print.why.${reason}`),
    onChoose: () => onReason(reason),
  }));
  return (
    <Dialog title={t('walk:print.whyTitle', { number: tag.tagNumber })} onClose={onClose}>
      <p>{t('walk:print.whyText', { count: tag.printed })}</p>
      <NumberedChoices
        choices={[...reasons, { key: 'none', label: t('walk:print.notAgain'), onChoose: onClose }]}
      />
    </Dialog>
  );
};
