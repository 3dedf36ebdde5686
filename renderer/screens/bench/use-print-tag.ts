/** Sends a tag to a printer and follows it to its end, or opens it as a document. */
import { useState } from 'react';
import type { BenchId } from '../../../src/domain/brand.ts';
import type { ReprintReason, TagKind } from '../../../src/domain/tag-content.ts';
import type { OutputOf } from '../../../src/station/contract.ts';
import { useStationCommand } from '../../station/hooks.ts';
import { openPdf } from '../../station/open-pdf.ts';
import { hasEnded, usePrintJob } from '../../station/print-job.ts';
import { useReadyStation } from '../../station/status.ts';
import { fileNameOf } from './file-name.ts';
import type { PrinterView, PrintWay } from './print-ways.ts';

export type PrintStep =
  | { readonly step: 'ready' }
  | { readonly step: 'printing'; readonly printer: PrinterView; readonly problem?: string | undefined }
  | {
      readonly step: 'printed';
      readonly printer: PrinterView;
      readonly confirmed: boolean;
      readonly files: readonly string[];
    }
  | { readonly step: 'opened'; readonly issued: OutputOf<'tag.issue'> }
  | { readonly step: 'refused'; readonly way: PrintWay; readonly sentence: string };

interface Latest {
  readonly way: PrintWay;
  readonly reason: ReprintReason | undefined;
  readonly job?: number;
  readonly issued?: OutputOf<'tag.issue'>;
  readonly refused?: string;
}

export interface PrintTag {
  readonly step: PrintStep;
  /** Why the latest print was a further one; kept for trying it again. */
  readonly reason: ReprintReason | undefined;
  give(way: PrintWay, reason: ReprintReason | undefined): Promise<void>;
  /** Takes the job back where the printer still holds it. */
  cancel(): Promise<void>;
}

export const usePrintTag = (benchId: BenchId, kind: TagKind): PrintTag => {
  const opensFiles = useReadyStation()?.opensFiles ?? false;
  const print = useStationCommand('tag.print');
  const issue = useStationCommand('tag.issue');
  const cancel = useStationCommand('print.cancel');
  const [latest, setLatest] = useState<Latest>();
  const job = usePrintJob(latest?.job);

  const give: PrintTag['give'] = async (way, reason) => {
    if (print.isRunning || issue.isRunning) return;
    const why = reason === undefined ? {} : { reprintBecause: reason };
    const begun = { way, reason };
    if (way.way === 'printer') {
      setLatest(begun);
      const result = await print.run({ benchId, kind, printerId: way.printer.printerId, ...why });
      setLatest({
        ...begun,
        ...(result.ok ? { job: result.output.job } : { refused: result.error.sentence }),
      });
      return;
    }
    const result = await issue.run({ benchId, kind, open: opensFiles, ...why });
    setLatest({
      ...begun,
      ...(result.ok ? { issued: result.output } : { refused: result.error.sentence }),
    });
    if (result.ok && !result.output.opened) {
      openPdf(result.output.pdfBase64, fileNameOf(result.output.pdfPath));
    }
  };

  const stepNow = (): PrintStep => {
    if (latest === undefined) return { step: 'ready' };
    const { way, issued } = latest;
    const { status, error } = job;
    const refused =
      latest.refused ??
      (status?.state === 'refused' ? status.sentence : undefined) ??
      (hasEnded(job) ? error?.sentence : undefined);
    if (refused !== undefined) return { step: 'refused', way, sentence: refused };
    if (way.way === 'open') return issued === undefined ? { step: 'ready' } : { step: 'opened', issued };
    const { printer } = way;
    if (status?.state === 'printed')
      return { step: 'printed', printer, confirmed: status.confirmed, files: status.files };
    const problem = status?.state === 'printing' ? status.problem : undefined;
    return { step: 'printing', printer, problem: error?.sentence ?? problem };
  };

  return {
    step: stepNow(),
    reason: latest?.reason,
    give,
    cancel: async () => {
      if (latest?.job !== undefined) await cancel.run({ job: latest.job });
    },
  };
};
