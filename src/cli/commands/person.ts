/** `person …`: the people of the station, their designations, and who was a competent person on a day. */
import { type Command, Option } from 'commander';
import { calendarDate } from '../../domain/brand.ts';
import { roles as allRoles, type Role } from '../../domain/person.ts';
import type { InputOf } from '../../station/contract.ts';
import { deviceMeant, type Job, jobOf, type StationCall, withStation } from '../job.ts';
import { competenceLine, personCells, personLines } from '../person-lines.ts';
import { pinFrom } from '../pin-from.ts';
import type { Shell } from '../terminal.ts';
import { columns } from '../wording.ts';
import { addPersonCorrect } from './correct.ts';

type Date = InputOf<'person.competence'>['on'];

interface DesignationOptions {
  readonly by: string;
  readonly on: Date;
  readonly until: Date;
  readonly document?: string;
  readonly course?: string;
  readonly trained?: Date;
  readonly scope?: readonly string[];
}

export const addPerson = (program: Command, shell: Shell): void => {
  const { words, terminal } = shell;
  const person = program.command('person').description(words('help-person'));
  addPersonCorrect(person, shell);
  const named = (name: string): Command => person.command(name).argument('<person>', words('help-person-id'));
  const roleOption = () => new Option('--role <role...>', words('help-person-role')).choices(allRoles);

  /** Runs the command, then shows the person as they stand in the record now. */
  const thenShow = async (
    job: Job,
    personId: string,
    work: (call: StationCall) => Promise<unknown>,
  ): Promise<void> =>
    withStation(job, async (call) => {
      await work(call);
      const record = await call('person.show', { personId });
      job.give(record, personLines(record, job));
    });

  person
    .command('list')
    .description(words('help-person-list'))
    .action(async (_options, command: Command) => {
      const job = jobOf(command, terminal);
      const { people } = await withStation(job, (call) => call('person.list', {}));
      job.give({ people }, columns(people.map((each) => personCells(each, job))));
    });

  named('show')
    .description(words('help-person-show'))
    .action((personId: string, _options, command: Command) =>
      thenShow(jobOf(command, terminal), personId, async () => undefined),
    );

  person
    .command('add')
    .description(words('help-person-add'))
    .requiredOption('--name <name>', words('help-person-name'))
    .requiredOption('--code <badge>', words('help-person-code'))
    .addOption(roleOption().makeOptionMandatory())
    .action(async ({ name, code, role }: { name: string; code: string; role: Role[] }, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) => {
        const { personId } = await call('person.add', { name, badge: code, roles: role });
        const record = await call('person.show', { personId });
        job.give(record, personLines(record, job));
      });
    });

  named('change')
    .description(words('help-person-change'))
    .option('--name <name>', words('help-person-name'))
    .option('--code <badge>', words('help-person-code'))
    .addOption(roleOption())
    .requiredOption('--because <reason>', words('help-because'))
    .action(
      (
        personId: string,
        { name, code, role, because }: { name?: string; code?: string; role?: Role[]; because: string },
        command: Command,
      ) =>
        thenShow(jobOf(command, terminal), personId, (call) =>
          call('person.change', {
            personId,
            because,
            ...(name === undefined ? {} : { name }),
            ...(code === undefined ? {} : { badge: code }),
            ...(role === undefined ? {} : { roles: role }),
          }),
        ),
    );

  named('designate')
    .description(words('help-person-designate'))
    .requiredOption('--by <name>', words('help-person-designated-by'))
    .requiredOption('--on <date>', words('help-person-designated-on'))
    .requiredOption('--until <date>', words('help-person-training-until'))
    .option('--document <reference>', words('help-person-document'))
    .option('--course <name>', words('help-person-course'))
    .option('--trained <date>', words('help-person-trained'))
    .option('--scope <model-sheet...>', words('help-person-scope'))
    .action((personId: string, options: DesignationOptions, command: Command) =>
      thenShow(jobOf(command, terminal), personId, (call) =>
        call('person.designate', { personId, designation: designationOf(options) }),
      ),
    );

  named('end-designation')
    .description(words('help-person-end-designation'))
    .option('--on <date>', words('help-person-ended-on'))
    .requiredOption('--because <reason>', words('help-because'))
    .action((personId: string, { on, because }: { on?: Date; because: string }, command: Command) =>
      thenShow(jobOf(command, terminal), personId, (call) =>
        call('person.end-designation', {
          personId,
          because,
          ...(on === undefined ? {} : { endedOn: on }),
        }),
      ),
    );

  named('leave')
    .description(words('help-person-leave'))
    .option('--on <date>', words('help-person-left-on'))
    .requiredOption('--because <reason>', words('help-because'))
    .action((personId: string, { on, because }: { on?: Date; because: string }, command: Command) =>
      thenShow(jobOf(command, terminal), personId, (call) =>
        call('person.leave', { personId, because, ...(on === undefined ? {} : { leftOn: on }) }),
      ),
    );

  named('return')
    .description(words('help-person-return'))
    .requiredOption('--because <reason>', words('help-because'))
    .action((personId: string, { because }: { because: string }, command: Command) =>
      thenShow(jobOf(command, terminal), personId, (call) => call('person.return', { personId, because })),
    );

  named('pin')
    .description(words('help-person-pin'))
    .option('--pin-file <file>', words('help-person-pin-file'))
    .option('--because <reason>', words('help-because'))
    .action(
      async (
        personId: string,
        { pinFile, because }: { pinFile?: string; because?: string },
        command: Command,
      ) => {
        const job = jobOf(command, terminal);
        const pin = await pinFrom(pinFile, job);
        const reason = because === undefined ? {} : { because };
        await thenShow(job, personId, (call) => call('person.set-pin', { personId, pin, ...reason }));
      },
    );

  named('competence')
    .description(words('help-person-competence'))
    .requiredOption('--on <date>', words('help-person-competence-on'))
    .option('--device <id>', words('help-device-id'))
    .action(async (personId: string, { on, device }: { on: Date; device?: string }, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) => {
        const benchId = device === undefined ? {} : { benchId: await deviceMeant(job, call, device) };
        const answer = await call('person.competence', { personId, on, ...benchId });
        job.give(answer, [competenceLine(answer, calendarDate(on), job)]);
      });
    });
};

const designationOf = ({
  by,
  on,
  until,
  document,
  course,
  trained,
  scope,
}: DesignationOptions): InputOf<'person.designate'>['designation'] => ({
  designatedBy: by,
  designatedOn: on,
  trainingValidUntil: until,
  ...(document === undefined ? {} : { document }),
  ...(course === undefined ? {} : { trainingCourse: course }),
  ...(trained === undefined ? {} : { trainedOn: trained }),
  ...(scope === undefined ? {} : { scope: [...scope] }),
});
