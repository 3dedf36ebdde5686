/** `checkout`, `checkin`, `custody …`: who takes a device out, what comes back, and who has what. */
import { type Command, InvalidArgumentError } from 'commander';
import { formatBenchId } from '../../domain/bench-id/bench-id.ts';
import { calendarDate } from '../../domain/brand.ts';
import type { InputOf, OutputOf } from '../../station/contract.ts';
import { Failure } from '../failure.ts';
import { deviceMeant, type Job, jobOf, type StationCall, withStation } from '../job.ts';
import type { Shell } from '../terminal.ts';
import { columns, dateText } from '../wording.ts';

type Answers = InputOf<'custody.check-in'>['answers'];

export const addCustody = (program: Command, shell: Shell): void => {
  const { words, terminal } = shell;

  program
    .command('checkout')
    .argument('<device...>', words('help-device-id'))
    .requiredOption('--user <badge>', words('help-checkout-user'))
    .option('--return <date>', words('help-checkout-return'))
    .option('--confirmed', words('help-checkout-confirmed'))
    .option('--kit <id>', words('help-checkout-kit'))
    .description(words('help-checkout'))
    .action(async (ids: string[], options: HandOutOptions & { kit?: string }, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) => {
        const { personId, name } = await call('desk.user', { badge: options.user });
        const benchIds = [];
        for (const id of ids) benchIds.push(await deviceMeant(job, call, id));
        const done = await call('custody.check-out', {
          userId: personId,
          benchIds,
          ...handOut(options, job),
          ...(options.kit === undefined ? {} : { kitId: options.kit }),
        });
        const [refused] = done.refused;
        if (refused !== undefined)
          throw new Failure({ code: refused.code, sentence: sentences(done, job) }, done);
        job.give(
          done,
          done.checkedOut.map((benchId) => words('checked-out', { benchId: formatBenchId(benchId), name })),
        );
      });
    });

  program
    .command('checkin')
    .argument('<device>', words('help-device-id'))
    .option('--no <question...>', words('help-checkin-no'))
    .option('--not-known <question...>', words('help-checkin-not-known'))
    .option('--yes <question=choice...>', words('help-checkin-yes'))
    .option('--note <words>', words('help-checkin-note'))
    .option('--answered-by <badge>', words('help-checkin-answered-by'))
    .option('--without-checkout', words('help-checkin-without'))
    .option('--place <code>', words('help-place'))
    .description(words('help-checkin'))
    .action(async (id: string, options: CheckInOptions, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) => {
        const benchId = await deviceMeant(job, call, id);
        const { answeredBy, withoutCheckout, place } = options;
        const who = answeredBy && (await call('desk.user', { badge: answeredBy })).personId;
        const done = await call('custody.check-in', {
          benchId,
          answers: answersOf(options, job),
          ...(who === undefined ? {} : { answeredBy: who }),
          ...(withoutCheckout ? { withoutCheckOut: true } : {}),
          ...(place === undefined ? {} : { place }),
        });
        const shown = { benchId: formatBenchId(benchId), place: done.quarantinePlace[job.language] };
        job.give(done, [
          words(done.held ? 'checked-in-held' : 'checked-in', shown),
          ...done.reasons.map(({ sentence }) => `  - ${sentence[job.language]}`),
          ...openWords(done, shown.benchId, job),
        ]);
      });
    });

  const custody = program.command('custody').description(words('help-custody'));

  custody
    .command('list')
    .option('--user <badge>', words('help-checkout-user'))
    .option('--overdue', words('help-custody-overdue'))
    .description(words('help-custody-list'))
    .action(async ({ user, overdue }: { user?: string; overdue?: boolean }, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) => {
        const userId = user && (await call('desk.user', { badge: user })).personId;
        const asked = { limit: 500, overdue: overdue ?? false, ...(userId === undefined ? {} : { userId }) };
        const found = await call('custody.list', asked);
        while (found.out.length < found.total) {
          const more = await call('custody.list', { ...asked, offset: found.out.length });
          if (more.out.length === 0) break;
          found.out.push(...more.out);
        }
        job.give(found, [
          ...columns(found.out.map((each) => outCells(each, job))),
          words('device-count', { shown: found.out.length, total: found.total }),
        ]);
      });
    });

  custody
    .command('history')
    .option('--device <device>', words('help-device-id'))
    .option('--user <badge>', words('help-checkout-user'))
    .description(words('help-custody-history'))
    .action(async ({ device, user }: { device?: string; user?: string }, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) => {
        const found = await call('custody.history', await historyOf(job, call, device, user));
        job.give(found, columns(found.spells.map((spell) => spellCells(spell, job))));
      });
    });

  custody
    .command('transfer')
    .argument('<device>', words('help-device-id'))
    .requiredOption('--to <badge>', words('help-transfer-to'))
    .option('--from <badge>', words('help-transfer-from'))
    .option('--because <reason>', words('help-because'))
    .option('--return <date>', words('help-checkout-return'))
    .option('--confirmed', words('help-checkout-confirmed'))
    .description(words('help-transfer'))
    .action(async (id: string, options: TransferOptions, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) => {
        const benchId = await deviceMeant(job, call, id);
        const to = await call('desk.user', { badge: options.to });
        const from = options.from && (await call('desk.user', { badge: options.from })).personId;
        await call('custody.transfer', {
          benchId,
          toUserId: to.personId,
          ...handOut(options, job),
          ...(from === undefined ? {} : { handedOverBy: from }),
          ...(options.because === undefined ? {} : { because: options.because }),
        });
        job.give({ benchId, toUserId: to.personId }, [
          words('transferred', { benchId: formatBenchId(benchId), name: to.name }),
        ]);
      });
    });

  custody
    .command('lost')
    .argument('<device>', words('help-device-id'))
    .requiredOption('--because <reason>', words('help-because'))
    .description(words('help-lost'))
    .action(async (id: string, { because }: { because: string }, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) => {
        const benchId = await deviceMeant(job, call, id);
        await call('custody.write-off', { benchId, because });
        job.give({ benchId }, [words('written-off', { benchId: formatBenchId(benchId) })]);
      });
    });
};

interface HandOutOptions {
  readonly user: string;
  readonly return?: string;
  readonly confirmed?: boolean;
}

type TransferOptions = Omit<HandOutOptions, 'user'> & {
  readonly to: string;
  readonly from?: string;
  readonly because?: string;
};

interface CheckInOptions {
  readonly no?: readonly string[];
  readonly notKnown?: readonly string[];
  readonly yes?: readonly string[];
  readonly note?: string;
  readonly answeredBy?: string;
  readonly withoutCheckout?: boolean;
  readonly place?: string;
}

const handOut = ({ return: expectedOn, confirmed }: Omit<HandOutOptions, 'user'>, { language }: Job) => ({
  ...(expectedOn === undefined ? {} : { expectedOn: calendarDate(expectedOn) }),
  ...(confirmed ? { preUse: { language } } : {}),
});

const sentences = ({ refused }: OutputOf<'custody.check-out'>, { language }: Job): string =>
  refused.map(({ sentence }) => sentence[language]).join('\n');

/** `exposure=drop,soaking` is a yes with two choices; the note goes with the first yes. */
const answersOf = ({ no = [], notKnown = [], yes = [], note }: CheckInOptions, { words }: Job): Answers => [
  ...no.map((question) => ({ question, said: 'no' as const })),
  ...notKnown.map((question) => ({ question, said: 'not known' as const })),
  ...yes.map((text, index) => {
    const [question = '', choices = ''] = text.split('=');
    if (choices === '') throw new InvalidArgumentError(words('checkin-yes-shape'));
    return {
      question,
      said: 'yes' as const,
      choices: choices.split(','),
      ...(note === undefined || index > 0 ? {} : { note }),
    };
  }),
];

const openWords = (
  { open }: OutputOf<'custody.check-in'>,
  benchId: string,
  { words }: Job,
): readonly string[] =>
  open === undefined
    ? []
    : [words('checkin-open', { benchId, questions: [...open.unanswered, ...open.unexplained].join(', ') })];

const historyOf = async (
  job: Job,
  call: StationCall,
  device: string | undefined,
  user: string | undefined,
): Promise<InputOf<'custody.history'>> => {
  if ((device === undefined) === (user === undefined))
    throw new InvalidArgumentError(job.words('custody-history-of'));
  return device === undefined
    ? { userId: (await call('desk.user', { badge: user ?? '' })).personId }
    : { benchId: await deviceMeant(job, call, device) };
};

const outCells = ({ device, user, overdue }: OutputOf<'custody.list'>['out'][number], job: Job) => {
  const { custody } = device;
  const date = (on: Parameters<typeof dateText>[0] | undefined) =>
    on === undefined ? '' : dateText(on, job.language);
  return [
    formatBenchId(device.benchId),
    `${device.manufacturer} ${device.model}`,
    user,
    date(custody?.since.on),
    date(custody?.expectedOn),
    custody?.lostOn === undefined ? (overdue ? job.words('return-overdue') : '') : job.words('return-lost'),
  ];
};

const spellCells = (spell: OutputOf<'custody.history'>['spells'][number], { language, words }: Job) => [
  formatBenchId(spell.benchId),
  spell.user,
  dateText(spell.since.on, language),
  spell.ended === undefined ? '' : dateText(spell.ended.on, language),
  spell.ended === undefined ? words('spell-open') : words(`spell-${spell.ended.how}`),
];
