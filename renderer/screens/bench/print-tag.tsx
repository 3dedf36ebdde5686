/** Gives the tag out: on the printer that it is meant for, on another one, or as a document. */
import { useState } from 'react';
import type { BenchId } from '../../../src/domain/brand.ts';
import type { CurrentTag } from '../../../src/domain/device.ts';
import type { ReprintReason, TagKind } from '../../../src/domain/tag-content.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { NumberedChoices } from '../../components/numbered-choices.tsx';
import { useText } from '../../i18n/text.ts';
import { IssuedNote } from './issued-note.tsx';
import { OpenTag } from './open-tag.tsx';
import styles from './print-tag.module.css';
import {
  isSame,
  keyOf,
  needsReason,
  offerOf,
  openWay,
  type PrinterView,
  type PrintWay,
} from './print-ways.ts';
import { PrintedNote } from './printed-note.tsx';
import { PrintingNow } from './printing-now.tsx';
import { ReprintDialog } from './reprint-dialog.tsx';
import { usePrintTag } from './use-print-tag.ts';

export interface PrintTagProps {
  readonly benchId: BenchId;
  readonly kind: TagKind;
  /** As the record has it now; absent where the device has none. */
  readonly tag: CurrentTag | undefined;
  readonly printers: readonly PrinterView[];
  /** The printer on whose stock the tag has no room, and why. */
  readonly misfit: { readonly printer: PrinterView; readonly sentence: string } | undefined;
  /** Told which printer the tag goes to, so that the picture is that of its stock. */
  onPrinter(printer: PrinterView): void;
}

export const PrintTag = ({ benchId, kind, tag, printers, misfit, onPrinter }: PrintTagProps) => {
  const { t } = useText();
  const { step, reason, give, cancel } = usePrintTag(benchId, kind);
  const [asked, setAsked] = useState<PrintWay>();
  const [isWhole, setWhole] = useState(false);
  const isAgain = needsReason(kind, tag);
  const failed = step.step === 'refused' ? step.way : undefined;

  const go = (way: PrintWay, because: ReprintReason | undefined): void => {
    setAsked(undefined);
    setWhole(false);
    if (way.way === 'printer') onPrinter(way.printer);
    void give(way, because);
  };
  const choose = (way: PrintWay): void => {
    if (!isAgain) go(way, undefined);
    else if (failed !== undefined && reason !== undefined) go(way, reason);
    else setAsked(way);
  };
  const labelOf = (way: PrintWay): string => {
    if (way.way === 'open') return t(isAgain ? 'walk:tag.openAgain' : 'walk:tag.open');
    const printer = way.printer.settings.name;
    if (failed !== undefined && isSame(way, failed)) return t('walk:print.retry', { printer });
    return t(isAgain ? 'walk:print.printAgain' : 'walk:print.print', { printer });
  };

  if (step.step === 'printing')
    return <PrintingNow printer={step.printer} problem={step.problem} onCancel={() => void cancel()} />;

  const used = step.step === 'printed' ? step.printer : undefined;
  const { ways, primary, isFolded } = offerOf({
    printers,
    kind,
    isAgain,
    isWhole,
    used,
    failed,
    misfit: misfit?.printer,
  });
  const choices = ways.map((way) => ({
    key: keyOf(way),
    label: labelOf(way),
    isPrimary: primary !== undefined && isSame(way, primary),
    onChoose: () => choose(way),
  }));
  const more = { key: 'more', label: t('walk:print.more'), onChoose: () => setWhole(true) };
  return (
    <section className={styles.print}>
      {step.step === 'printed' && <PrintedNote printed={step} />}
      <AlertLine sentence={step.step === 'refused' ? step.sentence : misfit?.sentence} />
      {printers.length === 0 ? (
        <OpenTag label={labelOf(openWay)} isNext={!isAgain} onOpen={() => choose(openWay)} />
      ) : (
        <NumberedChoices choices={isFolded ? [...choices, more] : choices} />
      )}
      {step.step === 'opened' && <IssuedNote issued={step.issued} />}
      {asked !== undefined && tag !== undefined && (
        <ReprintDialog
          tag={tag}
          onReason={(because) => go(asked, because)}
          onClose={() => setAsked(undefined)}
        />
      )}
    </section>
  );
};
