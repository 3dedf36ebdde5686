/** `due`: what is due until a day, the earliest first, with the rule that gave each date. */
import type { Command } from 'commander';
import { formatBenchId } from '../../domain/bench-id/bench-id.ts';
import { calendarDate } from '../../domain/brand.ts';
import { refusal } from '../../domain/refusal.ts';
import type { InputOf } from '../../station/contract.ts';
import { dueCells } from '../due-lines.ts';
import { failureOf } from '../failure.ts';
import { jobOf, withStation } from '../job.ts';
import type { Shell } from '../terminal.ts';
import { columns, dateText } from '../wording.ts';
import { wholeNumber } from './device.ts';

export const addDue = (program: Command, { words, terminal }: Shell): void => {
  program
    .command('due')
    .description(words('help-due-list'))
    .option('--on <date>', words('help-due-on'))
    .option('--limit <number>', words('help-limit'), wholeNumber(words), 1000)
    .action(async ({ on, limit }: { on?: InputOf<'due.list'>['until']; limit: number }, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) => {
        const status = await call('station.status', {});
        if (status.state !== 'ready') throw failureOf(refusal('station-not-set-up'), job.language);
        const until = calendarDate(on ?? status.today);
        const found = await call('due.list', { until, limit });
        job.give({ until, ...found }, [
          ...columns(
            found.devices.flatMap(({ device, due: [first] }) =>
              first === undefined
                ? []
                : [
                    [
                      formatBenchId(device.benchId),
                      `${device.manufacturer} ${device.model}`,
                      device.serial,
                      ...dueCells(first, job),
                    ],
                  ],
            ),
          ),
          words('due-count', {
            shown: found.devices.length,
            total: found.total,
            date: dateText(until, job.language),
            neverInspected: found.neverInspected,
          }),
        ]);
      });
    });
};
