/** `tag ID`: gives the tag of a device out as a file. */
import { type Command, InvalidArgumentError, Option } from 'commander';
import { formatBenchId } from '../../domain/bench-id/bench-id.ts';
import {
  type ReprintReason,
  reprintReasonSchema,
  type TagKind,
  tagKindSchema,
} from '../../domain/tag-content.ts';
import { checkWritable, readBytes, writeBytes } from '../files.ts';
import { deviceMeant, type Job, jobOf, withStation } from '../job.ts';
import { printerNamed, untilPrinted } from '../printer-named.ts';
import type { Shell } from '../terminal.ts';

interface TagOptions {
  readonly kind: TagKind;
  readonly format: 'pdf' | 'png';
  readonly dpi: '203' | '300' | '600';
  readonly stock?: Stock;
  readonly out?: string;
  readonly printer?: string;
  readonly because?: ReprintReason;
}

interface Stock {
  readonly widthMm: number;
  readonly heightMm: number;
}

const dotsPerInch = { 203: 203, 300: 300, 600: 600 } as const;

export const addTag = (program: Command, { words, terminal }: Shell): void => {
  program
    .command('tag')
    .argument('<id>', words('help-device-id'))
    .description(words('help-tag'))
    .addOption(
      new Option('--kind <kind>', words('help-tag-kind'))
        .choices(tagKindSchema.options)
        .makeOptionMandatory(),
    )
    .addOption(
      new Option('--format <format>', words('help-tag-format')).choices(['pdf', 'png']).default('pdf'),
    )
    .addOption(
      new Option('--dpi <number>', words('help-tag-dpi')).choices(Object.keys(dotsPerInch)).default('300'),
    )
    .option('--stock <WxH>', words('help-tag-stock'), stockFrom(words))
    .option('--out <file>', words('help-tag-out'))
    .option('--printer <name>', words('help-tag-printer'))
    .addOption(
      new Option('--because <reason>', words('help-tag-because')).choices(reprintReasonSchema.options),
    )
    .action(async (id: string, options: TagOptions, command: Command) => {
      const job = jobOf(command, terminal);
      if (options.printer !== undefined) return printTag(job, id, options.printer, options);
      const { kind, format, dpi, stock, out, because } = options;
      const { language } = job;
      if (out !== undefined) await checkWritable(out, language);
      await withStation(job, async (call) => {
        const benchId = await deviceMeant(job, call, id);
        const issued = await call('tag.issue', {
          benchId,
          kind,
          dpi: dotsPerInch[dpi],
          ...(stock === undefined ? {} : { stock }),
          ...(because === undefined ? {} : { reprintBecause: because }),
        });
        const kept = format === 'pdf' ? issued.pdfPath : issued.pngPath;
        if (out !== undefined) await writeBytes(out, await readBytes(kept, language), language);
        const file = out ?? kept;
        job.give({ benchId, kind, format, file, symbols: issued.symbols }, [
          words('tag-written', { benchId: formatBenchId(benchId), file }),
        ]);
      });
    });
};

/** The stock and the dots are those of the printer. */
const printTag = async (
  job: Job,
  id: string,
  printerName: string,
  { kind, because }: TagOptions,
): Promise<void> =>
  withStation(job, async (call) => {
    const benchId = await deviceMeant(job, call, id);
    const { printerId } = await printerNamed(job, call, printerName);
    const reprint = because === undefined ? {} : { reprintBecause: because };
    const { job: printJob } = await call('tag.print', { benchId, kind, printerId, ...reprint });
    const printed = await untilPrinted(job, call, printJob);
    const line = printed.confirmed ? 'tag-printed' : 'tag-sent';
    job.give({ benchId, kind, printerId, ...printed }, [
      job.words(line, { benchId: formatBenchId(benchId), printer: printerName }),
    ]);
  });

/** `100x50`, in millimetres. */
const stockFrom =
  (words: Job['words']) =>
  (text: string): Stock => {
    const [, width, height] = /^(\d{2,3}(?:\.\d+)?)[x×](\d{2,3}(?:\.\d+)?)$/i.exec(text) ?? [];
    if (width === undefined || height === undefined) throw new InvalidArgumentError(words('stock-shape'));
    return { widthMm: Number(width), heightMm: Number(height) };
  };
