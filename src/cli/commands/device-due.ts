/** `device use`, `revalidated`, `maker-intervals`: what decides on the due dates of devices. */
import { type Command, InvalidArgumentError, Option } from 'commander';
import { formatBenchId } from '../../domain/bench-id/bench-id.ts';
import { type TypeOfUse, typesOfUse } from '../../domain/due/type-of-use.ts';
import type { InputOf } from '../../station/contract.ts';
import { deviceMeant, jobOf, withStation } from '../job.ts';
import type { Shell } from '../terminal.ts';

/** `none` says that the manual states none. */
type Interval = number | 'none';

interface RevalidatedOptions {
  readonly on: InputOf<'device.record-revalidation'>['revalidatedOn'];
  readonly by: string;
  readonly certificate: string;
}

interface IntervalOptions {
  readonly inspection?: Interval;
  readonly revalidation?: Interval;
  readonly serviceLife?: Interval;
  readonly from: 'manufacture' | 'first use';
}

export const addDeviceDue = (device: Command, { words, terminal }: Shell): void => {
  const orNone = (text: string): Interval => {
    if (text === 'none') return text;
    if (/^[1-9]\d{0,3}$/.test(text)) return Number(text);
    throw new InvalidArgumentError(words('number-shape'));
  };

  device
    .command('use')
    .argument('<id...>', words('help-device-id'))
    .description(words('help-device-use'))
    .addOption(
      new Option('--type <type>', words('help-device-use-type')).choices(typesOfUse).makeOptionMandatory(),
    )
    .option('--from <date>', words('help-device-use-from'))
    .action(
      async (
        ids: readonly string[],
        { type, from }: { type: TypeOfUse; from?: InputOf<'device.set-use'>['from'] },
        command: Command,
      ) => {
        const job = jobOf(command, terminal);
        await withStation(job, async (call) => {
          const benchIds = [];
          for (const id of ids) benchIds.push(await deviceMeant(job, call, id));
          const { changed } = await call('device.set-use', {
            benchIds,
            typeOfUse: type,
            ...(from === undefined ? {} : { from }),
          });
          job.give({ benchIds, typeOfUse: type, changed }, [
            words('device-use-set', { count: changed, use: words(`use-${type}`) }),
          ]);
        });
      },
    );

  device
    .command('revalidated')
    .argument('<id>', words('help-device-id'))
    .description(words('help-device-revalidated'))
    .requiredOption('--on <date>', words('help-device-revalidated-on'))
    .requiredOption('--by <name>', words('help-device-revalidated-by'))
    .requiredOption('--certificate <number>', words('help-device-revalidated-certificate'))
    .action(async (id: string, { on, by, certificate }: RevalidatedOptions, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) => {
        const benchId = await deviceMeant(job, call, id);
        const revalidation = { revalidatedOn: on, revalidatedBy: by, certificate };
        const { changed } = await call('device.record-revalidation', { benchId, ...revalidation });
        job.give({ benchId, ...revalidation, changed }, [
          words('device-revalidated', { benchId: formatBenchId(benchId), on }),
        ]);
      });
    });

  device
    .command('maker-intervals')
    .argument('<id>', words('help-device-id'))
    .description(words('help-maker-intervals'))
    .option('--inspection <months>', words('help-maker-inspection'), orNone)
    .option('--revalidation <months>', words('help-maker-revalidation'), orNone)
    .option('--service-life <years>', words('help-maker-service-life'), orNone)
    .addOption(
      new Option('--from <event>', words('help-maker-service-from'))
        .choices(['manufacture', 'first use'])
        .default('manufacture'),
    )
    .addHelpText('after', `\n${words('help-maker-intervals-none')}`)
    .action(async (id: string, options: IntervalOptions, command: Command) => {
      const job = jobOf(command, terminal);
      const { inspection, revalidation, serviceLife, from } = options;
      await withStation(job, async (call) => {
        const { device: card } = await call('device.show', { benchId: await deviceMeant(job, call, id) });
        const { modelSheetId, manufacturer, model } = card.modelSheet;
        const { changed } = await call('model-sheet.set-intervals', {
          modelSheetId,
          ...(inspection === undefined ? {} : { manufacturerIntervalMonths: orNull(inspection) }),
          ...(revalidation === undefined ? {} : { manufacturerRevalidationMonths: orNull(revalidation) }),
          ...(serviceLife === undefined
            ? {}
            : { serviceLife: serviceLife === 'none' ? null : { years: serviceLife, from } }),
        });
        job.give({ modelSheetId, changed }, [
          words('maker-intervals-set', { model: `${manufacturer} ${model}` }),
        ]);
      });
    });
};

const orNull = (interval: Interval): number | null => (interval === 'none' ? null : interval);
