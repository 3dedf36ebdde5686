/** The command line as a whole: its commands, the options that all of them have, and its help in both languages. */
import { Command, type CommanderError, Option } from 'commander';
import { languages } from '../domain/message.ts';
import type { WordKey, Words } from '../host/words.ts';
import { addBackup } from './commands/backup.ts';
import { addBenchCard } from './commands/bench-card.ts';
import { addCase } from './commands/case.ts';
import { addCustody } from './commands/custody.ts';
import { addDemo } from './commands/demo.ts';
import { addDevice } from './commands/device.ts';
import { addDoctor } from './commands/doctor.ts';
import { addDue } from './commands/due.ts';
import { addEvidence } from './commands/evidence.ts';
import { addExport } from './commands/export.ts';
import { addHeld } from './commands/held.ts';
import { addId } from './commands/id.ts';
import { addIdentity } from './commands/identity.ts';
import { addImport } from './commands/import.ts';
import { addInspect } from './commands/inspect.ts';
import { addLabel } from './commands/label.ts';
import { addLedger } from './commands/ledger.ts';
import { addLifeline } from './commands/lifeline.ts';
import { addMarkings } from './commands/markings.ts';
import { addNotice } from './commands/notice.ts';
import { addPerson } from './commands/person.ts';
import { addPrinter } from './commands/printer.ts';
import { addProcedure } from './commands/procedure.ts';
import { addProgram } from './commands/program.ts';
import { addRead } from './commands/read.ts';
import { addReinspection } from './commands/reinspection.ts';
import { addReport } from './commands/report.ts';
import { addReturn } from './commands/return.ts';
import { addReturnPlan } from './commands/return-plan.ts';
import { addScan } from './commands/scan.ts';
import { addSchedule } from './commands/schedule.ts';
import { addServe } from './commands/serve.ts';
import { addStock } from './commands/stock.ts';
import { addTag } from './commands/tag.ts';
import type { Shell } from './terminal.ts';

export const programFor = (shell: Shell): Command => {
  const { words, terminal } = shell;
  const program = new Command('npm run cli --')
    .description(words('help-program'))
    .option('--data <dir>', words('help-data'))
    .option('--json', words('help-json'))
    .option('--badge <code>', words('help-badge'))
    .addOption(new Option('--language <language>', words('help-language')).choices(languages))
    .helpOption('-h, --help', words('help-help'))
    .helpCommand(false)
    .configureHelp({ showGlobalOptions: true, styleTitle: (title) => translated(title, words) })
    .configureOutput({
      writeOut: (text) => terminal.out(text),
      writeErr: (text) => terminal.err(text),
      outputError: () => undefined,
    })
    .exitOverride();
  for (const add of [
    addDemo,
    addDevice,
    addDue,
    addProgram,
    addProcedure,
    addInspect,
    addEvidence,
    addLifeline,
    addTag,
    addPrinter,
    addLabel,
    addBenchCard,
    addRead,
    addScan,
    addId,
    addIdentity,
    addMarkings,
    addNotice,
    addPerson,
    addCustody,
    addStock,
    addHeld,
    addCase,
    addReturn,
    addImport,
    addExport,
    addReturnPlan,
    addSchedule,
    addReinspection,
    addReport,
    addBackup,
    addLedger,
    addDoctor,
    addServe,
  ]) {
    add(program, shell);
  }
  for (const command of everyCommand(program)) {
    command.helpOption('-h, --help', words('help-help')).helpCommand(false);
  }
  return program;
};

const everyCommand = (command: Command): readonly Command[] =>
  command.commands.flatMap((each) => [each, ...everyCommand(each)]);

const titles: Readonly<Record<string, WordKey>> = {
  'Usage:': 'title-usage',
  'Arguments:': 'title-arguments',
  'Options:': 'title-options',
  'Global Options:': 'title-global-options',
  'Commands:': 'title-commands',
};

const translated = (title: string, words: Words): string => {
  const key = titles[title];
  return key === undefined ? title : words(key);
};

const usageFaults: Readonly<Record<string, WordKey>> = {
  'commander.unknownCommand': 'usage-unknown-command',
  'commander.unknownOption': 'usage-unknown-option',
  'commander.excessArguments': 'usage-excess-arguments',
  'commander.missingArgument': 'usage-missing-argument',
  'commander.optionMissingArgument': 'usage-option-without-value',
  'commander.missingMandatoryOptionValue': 'usage-missing-option',
  'commander.invalidArgument': 'usage-invalid-value',
};

/** What is wrong with the command line, in one sentence. */
export const usageSentence = (error: CommanderError, words: Words): string => {
  const [, what = ''] = /'([^']*)'/.exec(error.message) ?? [];
  return words(usageFaults[error.code] ?? 'usage-wrong', { what });
};
