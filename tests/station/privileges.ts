/**
 * Who may call what, as it was decided by hand: the table that the station is held against. What an operation wants besides
 * its role (a designation that holds today, another person than before, a PIN) is for the tests of that operation.
 */
import type { Role } from '../../src/domain/person.ts';

export interface Privilege {
  /** Empty where nobody need be signed in. */
  readonly roles: readonly Role[];
  readonly because: string;
  readonly operations: readonly string[];
}

const words = (text: string): readonly string[] => text.trim().split(/\s+/);

export const privileges: readonly Privilege[] = [
  {
    roles: [],
    because: 'It is how a station begins, how somebody comes in or goes, or what a scan means.',
    operations: words(
      `station.status station.setup station.load-demo session.sign-in session.sign-out session.attend
      session.unattended scan.interpret scanner.symbol`,
    ),
  },
  {
    roles: [],
    because: 'It tells nothing of a device or a person: rules, printed symbols, the code itself.',
    operations: words(
      'procedure.show rule-sources.list command-sheet.show bench-card.show bench-id.new bench-id.check picture.read',
    ),
  },
  {
    roles: [],
    because:
      'Whether the record is sound may be asked by anybody who stands before it; it tells sizes and faults only.',
    operations: words(
      `evidence.summary record.size ledger.verify ledger.verify-start ledger.verify-status ledger.verify-cancel
      ledger.check-proof checkpoint.list`,
    ),
  },
  {
    roles: [],
    because:
      'Whoever stands before a station that does not work must learn why, signed in or not; it changes nothing.',
    operations: words('health.start health.status health.cancel'),
  },
  {
    roles: [],
    because:
      'At an empty station nobody can sign in; the restore itself takes an administrator and their PIN.',
    operations: words('restore.open restore.status restore.cancel restore.run'),
  },
  {
    roles: ['user', 'attendant', 'inspector', 'administrator'],
    because: 'Everybody who works here may see what is recorded, and the station keeps no secret of it.',
    operations: words(
      `person.list person.show person.competence model-sheet.list device.list device.bench-ids device.show device.pictures
      marking-request.list due.list notice.show notice.read notice.preview notice.list identity.show identity.list desk.show
      desk.user custody.check custody.list custody.history kit.list held.list held.show held.document fall-case.list
      fall-case.show repair-terms.list return-batch.list return-batch.show count.places count.preview program.show
      program.version inspection.show inspection.pictures inspection.list lifeline.show insight.show insight.agreement reinspection.list picture.show
      evidence.list record.amendable keeping.show ledger.prove ledger.export bench.capacity schedule.due schedule.plan
      schedule.plan-cancel schedule.planning schedule.devices schedule.notices printer.list bin-label.show tag.preview
      print.status`,
    ),
  },
  {
    roles: ['user', 'attendant', 'inspector', 'administrator'],
    because:
      'Whoever sees that a device is not safe, or cannot be told from another, must be able to say so.',
    operations: words('device.remove identity.open'),
  },
  {
    roles: ['user', 'attendant', 'inspector', 'administrator'],
    because:
      'What makes a competent person is the designation, not the role: these ask for it, or for the PIN, themselves.',
    operations: words(
      `inspection.start inspection.answer inspection.keep-picture inspection.sign inspection.break-off device.set-use
      device.record-revalidation identity.propose identity.confirm identity.disagree identity.leave-unidentified
      held.confirm-evidence record.amend reinspection.begin reinspection.see`,
    ),
  },
  {
    roles: ['user', 'attendant', 'inspector', 'administrator'],
    because:
      'It changes nothing of a device: tags that say what is recorded, the own PIN, the scanner, a copy of the checkpoint.',
    operations: words(
      'tag.issue tag.print tag.prove print.cancel person.change-own-pin scanner.learn scanner.forget checkpoint.export',
    ),
  },
  {
    roles: ['attendant', 'inspector', 'administrator'],
    because:
      'Work of the tool room: devices come in, are described, labelled, stored, held, returned and scrapped.',
    operations: words(
      `model-sheet.record model-sheet.set-contact model-sheet.set-minimum-diameter device.register device.bind-code
      device.keep-picture device.record-facts device.relabel device.store device.scrap identity.search custody.check-in
      count.finish held.record-evidence release.take fall-case.open fall-case.note repair-terms.record return-batch.add
      return-batch.take-out return-batch.ship return-batch.follow-up return-batch.receive return-plan.start
      return-plan.status return-plan.cancel returns-basis.show returns-basis.record device-quote.record reinspection.draw
      report.make report.status report.cancel report.file printer.check`,
    ),
  },
  {
    roles: ['attendant', 'administrator'],
    because: 'The desk: what goes out, and to whom.',
    operations: words('custody.check-out custody.transfer custody.write-off kit.save kit.remove'),
  },
  {
    roles: ['inspector', 'administrator'],
    because: 'It decides for many devices at once, weighs evidence, or takes the whole record out or in.',
    operations: words(
      `model-sheet.set-intervals notice.record notice.record-start notice.record-status notice.record-cancel
      held.withdraw-evidence fall-case.close import.preview import.run import.status
      import.cancel record.export export.status export.cancel backup.make backup.status backup.cancel`,
    ),
  },
  {
    roles: ['administrator'],
    because: 'People and what they may do, the rules, and how the station itself is set.',
    operations: words(
      `person.add person.designate person.set-pin person.change person.end-designation person.leave person.return
      program.adopt printer.save printer.remove printer.test printer.calibrate bench.set-capacity keeping.set
      station.set-unattended ledger.rebuild`,
    ),
  },
];

/**
 * What a badge alone never does: these take the PIN of whoever signs, and refuse without it. `restore.run` asks for it as soon
 * as there is anybody who has one.
 */
export const signedWithPin: readonly string[] = words(
  `inspection.sign record.amend identity.propose identity.confirm identity.disagree held.confirm-evidence notice.record
  notice.record-start program.adopt person.set-pin person.change-own-pin`,
);
