/** `printer list|save|check|remove`: the print destinations of the station. */
import type { Command } from 'commander';
import type { InputOf } from '../../station/contract.ts';
import { readJson } from '../files.ts';
import { jobOf, withStation } from '../job.ts';
import { printerNamed } from '../printer-named.ts';
import type { Shell } from '../terminal.ts';
import { columns } from '../wording.ts';

export const addPrinter = (program: Command, { words, terminal }: Shell): void => {
  const printer = program.command('printer').description(words('help-printer'));

  printer
    .command('list')
    .description(words('help-printer-list'))
    .action(async (_options, command: Command) => {
      const job = jobOf(command, terminal);
      const listed = await withStation(job, (call) => call('printer.list', {}));
      const rows = listed.printers.map(({ settings, tagKinds }) => [
        settings.name,
        settings.kind,
        `${settings.stock.widthMm} × ${settings.stock.heightMm} mm`,
        `${settings.dpi} dpi`,
        tagKinds.join(', '),
      ]);
      job.give(listed, rows.length === 0 ? [words('no-printers')] : columns(rows));
    });

  printer
    .command('save')
    .argument('<file.json>', words('help-printer-file'))
    .description(words('help-printer-save'))
    .addHelpText('after', `\n${words('help-printer-save-file')}`)
    .action(async (file: string, _options, command: Command) => {
      const job = jobOf(command, terminal);
      const input = (await readJson(file, job.language)) as InputOf<'printer.save'>;
      const saved = await withStation(job, (call) => call('printer.save', input));
      job.give(saved, [words('printer-saved', { printerId: saved.printerId })]);
    });

  printer
    .command('check')
    .argument('<name>', words('help-printer-name'))
    .description(words('help-printer-check'))
    .action(async (name: string, _options, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) => {
        const { settings } = await printerNamed(job, call, name);
        const state = await call('printer.check', { settings });
        job.give(state, [state.problem ?? words(`printer-${state.condition}`)]);
      });
    });

  printer
    .command('remove')
    .argument('<name>', words('help-printer-name'))
    .description(words('help-printer-remove'))
    .action(async (name: string, _options, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) => {
        const { printerId } = await printerNamed(job, call, name);
        await call('printer.remove', { printerId });
        job.give({ printerId }, [words('printer-removed', { name })]);
      });
    });
};
