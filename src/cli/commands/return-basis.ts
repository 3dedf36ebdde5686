/** `return costs|quote|need|planning|basis`: what a plan of returns is made of, entered and shown. */
import { type Command, InvalidArgumentError } from 'commander';
import { formatBenchId } from '../../domain/bench-id/bench-id.ts';
import { calendarDate, metres } from '../../domain/brand.ts';
import { lengthText } from '../../domain/length.ts';
import type { OutputOf } from '../../station/contract.ts';
import { deviceMeant, type Job, jobOf, withStation } from '../job.ts';
import type { Shell } from '../terminal.ts';

type Basis = OutputOf<'returns-basis.show'>;
type PriceBreak = NonNullable<Basis['makers'][number]['terms']>['priceBreaks'][number];

export const addReturnBasis = (returns: Command, { words, terminal }: Shell): void => {
  const priceBreak = (text: string, before: readonly PriceBreak[] = []): readonly PriceBreak[] => {
    const [, from, percentOff] = /^(\d+):(\d+(?:\.\d+)?)$/.exec(text) ?? [];
    if (from === undefined) throw new InvalidArgumentError(words('help-price-break'));
    return [...before, { from: Number(from), percentOff: Number(percentOff) }];
  };
  const numbers = (text: string): readonly number[] => text.split(',').map(Number);

  returns
    .command('costs')
    .argument('<manufacturer>', words('help-return-maker'))
    .requiredOption('--shipment <amount>', words('help-shipment-cost'), Number)
    .option('--break <from:percent...>', words('help-price-break'), priceBreak)
    .option('--turnaround <days>', words('help-turnaround'), Number)
    .description(words('help-return-costs'))
    .action(async (manufacturer: string, options: CostOptions, command: Command) => {
      const job = jobOf(command, terminal);
      const { shipment, break: priceBreaks = [], turnaround } = options;
      await withStation(job, async (call) => {
        await call('returns-basis.record', {
          change: {
            what: 'maker',
            manufacturer,
            shipmentCost: shipment,
            priceBreaks: [...priceBreaks],
            ...(turnaround === undefined ? {} : { turnaroundDays: turnaround }),
          },
        });
        give(job, await call('returns-basis.show', {}));
      });
    });

  returns
    .command('quote')
    .argument('<device>', words('help-device-id'))
    .requiredOption('--price <amount>', words('help-price'), Number)
    .option('--lead-time <days>', words('help-lead-time'), Number)
    .option('--quote <number>', words('help-quote'))
    .option('--valid-until <date>', words('help-quote-valid'))
    .description(words('help-return-quote'))
    .action(async (id: string, options: QuoteOptions, command: Command) => {
      const job = jobOf(command, terminal);
      const { price, leadTime, quote, validUntil } = options;
      await withStation(job, async (call) => {
        const benchId = await deviceMeant(job, call, id);
        await call('device-quote.record', {
          benchId,
          price,
          ...(leadTime === undefined ? {} : { leadTimeDays: leadTime }),
          ...(quote === undefined ? {} : { quote }),
          ...(validUntil === undefined ? {} : { validUntil: calendarDate(validUntil) }),
        });
        job.give({ benchId }, [words('quote-recorded', { benchId: formatBenchId(benchId) })]);
      });
    });

  returns
    .command('need')
    .argument('<metres>', words('help-return-length'), Number)
    .option('--needed <counts>', words('help-needed'), numbers)
    .option('--price <amount>', words('help-new-price'), Number)
    .option('--lead-time <days>', words('help-new-lead-time'), Number)
    .option('--life-years <years>', words('help-new-life'), Number)
    .description(words('help-return-need'))
    .action(async (lengthM: number, options: NeedOptions, command: Command) => {
      const job = jobOf(command, terminal);
      const { needed, price, leadTime, lifeYears } = options;
      const [always] = needed ?? [];
      await withStation(job, async (call) => {
        await call('returns-basis.record', {
          change: {
            what: 'length',
            lengthM: metres(lengthM),
            ...(needed === undefined || always === undefined
              ? {}
              : { needed: needed.length === 1 ? Array.from({ length: 12 }, () => always) : [...needed] }),
            ...(price === undefined || leadTime === undefined
              ? {}
              : {
                  newDevice: {
                    price,
                    leadTimeDays: leadTime,
                    ...(lifeYears === undefined ? {} : { lifeYears }),
                  },
                }),
          },
        });
        give(job, await call('returns-basis.show', {}));
      });
    });

  returns
    .command('planning')
    .requiredOption('--months <number>', words('help-plan-months'), Number)
    .option('--currency <name>', words('help-currency'))
    .description(words('help-return-planning'))
    .action(async ({ months, currency }: { months: number; currency?: string }, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) => {
        await call('returns-basis.record', {
          change: { what: 'plan', months, ...(currency === undefined ? {} : { currency }) },
        });
        give(job, await call('returns-basis.show', {}));
      });
    });

  returns
    .command('basis')
    .description(words('help-return-basis'))
    .action(async (_options, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) => give(job, await call('returns-basis.show', {})));
    });
};

interface CostOptions {
  readonly shipment: number;
  readonly break?: readonly PriceBreak[];
  readonly turnaround?: number;
}

interface QuoteOptions {
  readonly price: number;
  readonly leadTime?: number;
  readonly quote?: string;
  readonly validUntil?: string;
}

interface NeedOptions {
  readonly needed?: readonly number[];
  readonly price?: number;
  readonly leadTime?: number;
  readonly lifeYears?: number;
}

/** What was entered, then what is missing and which devices are no part of a plan. */
const give = (job: Job, basis: Basis): void => {
  const { words, language } = job;
  const { currency = '', months, devices, makers, lengths, missing, apart } = basis;
  const notEntered = words('basis-not-entered');
  const amount = (value: number | undefined): string =>
    value === undefined ? notEntered : `${value} ${currency}`.trim();
  job.give(basis, [
    words('basis-plan', { months, devices }),
    ...makers.map(({ manufacturer, terms }) =>
      words('basis-maker', {
        manufacturer,
        cost: amount(terms?.shipmentCost),
        breaks: (terms?.priceBreaks ?? [])
          .map(({ from, percentOff }) => `${from}:${percentOff} %`)
          .join(', '),
      }),
    ),
    ...lengths.map(({ lengthM, inService, plan }) =>
      words('basis-length', {
        length: lengthText(lengthM, 'm', language),
        inService,
        needed: [...new Set(plan?.needed ?? [])].join(', ') || notEntered,
        price: amount(plan?.newDevice?.price),
      }),
    ),
    ...missing.map(({ sentence }) => sentence),
    ...apart.map(({ sentence }) => sentence),
  ]);
};
