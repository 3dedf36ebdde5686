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
  isOn,
  needsReason,
  type PrinterView,
  type PrintWay,
  primaryWayOf,
  waysAgain,
  waysOf,
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
  /** Told which printer the tag goes to, so that the picture is that of its stock. */
  onPrinter(printer: PrinterView): void;
}

export const PrintTag = ({ benchId, kind, tag, printers, onPrinter }: PrintTagProps) => {
  const { t } = useText();
  const { step, reason, give, cancel } = usePrintTag(benchId, kind);
  const [asked, setAsked] = useState<PrintWay>();
  const isAgain = needsReason(kind, tag);
  const failedOn =
    step.step === 'refused' && step.way.way === 'printer' ? step.way.printer.printerId : undefined;

  const go = (way: PrintWay, because: ReprintReason | undefined): void => {
    setAsked(undefined);
    if (way.way === 'printer') onPrinter(way.printer);
    void give(way, because);
  };
  const choose = (way: PrintWay): void => {
    if (!isAgain) go(way, undefined);
    else if (step.step === 'refused' && reason !== undefined) go(way, reason);
    else setAsked(way);
  };

  if (step.step === 'printing')
    return <PrintingNow printer={step.printer} problem={step.problem} onCancel={() => void cancel()} />;

  const ways = failedOn === undefined ? waysOf(printers, kind) : waysAgain(waysOf(printers, kind), failedOn);
  const primary = isAgain ? undefined : primaryWayOf(printers, kind);
  const isPrimary = (way: PrintWay): boolean =>
    failedOn === undefined
      ? way.way === primary?.way && (way.way === 'open' || isOn(way, printerIdOf(primary)))
      : isOn(way, failedOn);
  const labelOf = (way: PrintWay): string => {
    if (way.way === 'open') return t(isAgain ? 'walk:tag.openAgain' : 'walk:tag.open');
    const printer = way.printer.settings.name;
    if (isOn(way, failedOn)) return t('walk:print.retry', { printer });
    return t(isAgain ? 'walk:print.printAgain' : 'walk:print.print', { printer });
  };
  return (
    <section className={styles.print}>
      {step.step === 'printed' && <PrintedNote printed={step} />}
      <AlertLine sentence={step.step === 'refused' ? step.sentence : undefined} />
      {printers.length === 0 ? (
        <OpenTag label={labelOf({ way: 'open' })} isNext={!isAgain} onOpen={() => choose({ way: 'open' })} />
      ) : (
        <NumberedChoices
          choices={ways.map((way) => ({
            key: way.way === 'open' ? 'open' : way.printer.printerId,
            label: labelOf(way),
            isPrimary: isPrimary(way),
            onChoose: () => choose(way),
          }))}
        />
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

const printerIdOf = (way: PrintWay | undefined): string | undefined =>
  way?.way === 'printer' ? way.printer.printerId : undefined;
