/** Where the quarantine tag of a held device is: coming out, out, or refused. */
import { AlertLine } from '../../components/alert-line.tsx';
import { useText } from '../../i18n/text.ts';
import type { QuarantineTag } from './use-quarantine-tag.ts';

export const QuarantineTagLine = ({ tag: { step, sent } }: { readonly tag: QuarantineTag }) => {
  const { t } = useText();
  return (
    <>
      {step.step === 'printing' && <p>{t('desk:printing', { printer: step.printer.settings.name })}</p>}
      {step.step === 'printed' && <p>{t('desk:printed', { printer: step.printer.settings.name })}</p>}
      {sent > 1 && <p>{t('desk:printedAgain')}</p>}
      <AlertLine sentence={step.step === 'refused' ? step.sentence : undefined} />
    </>
  );
};
