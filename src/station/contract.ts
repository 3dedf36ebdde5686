/** The contract: the one table of everything that can be asked of a station. Carriers know this table and no operation by name. */
import type { z } from 'zod';
import { heldOperations } from './held-operations.ts';
import { backupCancel } from './operations/backup-cancel.ts';
import { backupMake } from './operations/backup-make.ts';
import { backupStatus } from './operations/backup-status.ts';
import { benchCapacityOperation } from './operations/bench-capacity.ts';
import { benchCardShow } from './operations/bench-card-show.ts';
import { benchIdCheck } from './operations/bench-id-check.ts';
import { benchIdNew } from './operations/bench-id-new.ts';
import { benchSetCapacity } from './operations/bench-set-capacity.ts';
import { binLabel } from './operations/bin-label.ts';
import { checkpointExport } from './operations/checkpoint-export.ts';
import { checkpointList } from './operations/checkpoint-list.ts';
import { commandSheet } from './operations/command-sheet.ts';
import { countFinish } from './operations/count-finish.ts';
import { countPlaces } from './operations/count-places.ts';
import { countPreview } from './operations/count-preview.ts';
import { custodyCheck } from './operations/custody-check.ts';
import { custodyCheckIn } from './operations/custody-check-in.ts';
import { custodyCheckOut } from './operations/custody-check-out.ts';
import { custodyHistory } from './operations/custody-history.ts';
import { custodyList } from './operations/custody-list.ts';
import { custodyTransfer } from './operations/custody-transfer.ts';
import { custodyWriteOff } from './operations/custody-write-off.ts';
import { deskShow } from './operations/desk-show.ts';
import { deskUser } from './operations/desk-user.ts';
import { deviceBenchIds } from './operations/device-bench-ids.ts';
import { deviceBindCode } from './operations/device-bind-code.ts';
import { deviceKeepPicture } from './operations/device-keep-picture.ts';
import { deviceList } from './operations/device-list.ts';
import { devicePictures } from './operations/device-pictures.ts';
import { deviceRecordFacts } from './operations/device-record-facts.ts';
import { deviceRecordRevalidation } from './operations/device-record-revalidation.ts';
import { deviceRegister } from './operations/device-register.ts';
import { deviceRelabel } from './operations/device-relabel.ts';
import { deviceRemove } from './operations/device-remove.ts';
import { deviceSetUse } from './operations/device-set-use.ts';
import { deviceShow } from './operations/device-show.ts';
import { deviceStore } from './operations/device-store.ts';
import { dueList } from './operations/due-list.ts';
import { evidenceList } from './operations/evidence-list.ts';
import { evidenceSummary } from './operations/evidence-summary.ts';
import { exportCancel } from './operations/export-cancel.ts';
import { exportStatus } from './operations/export-status.ts';
import { healthCancel } from './operations/health-cancel.ts';
import { healthStart } from './operations/health-start.ts';
import { healthStatus } from './operations/health-status.ts';
import { identityConfirm } from './operations/identity-confirm.ts';
import { identityDisagree } from './operations/identity-disagree.ts';
import { identityLeaveUnidentified } from './operations/identity-leave-unidentified.ts';
import { identityList } from './operations/identity-list.ts';
import { identityOpen } from './operations/identity-open.ts';
import { identityPropose } from './operations/identity-propose.ts';
import { identitySearch } from './operations/identity-search.ts';
import { identityShow } from './operations/identity-show.ts';
import { importCancel } from './operations/import-cancel.ts';
import { importPreviewOperation } from './operations/import-preview.ts';
import { importRun } from './operations/import-run.ts';
import { importStatus } from './operations/import-status.ts';
import { insightAgreement } from './operations/insight-agreement.ts';
import { insightShow } from './operations/insight-show.ts';
import { inspectionAnswer } from './operations/inspection-answer.ts';
import { inspectionBreakOff } from './operations/inspection-break-off.ts';
import { inspectionKeepPicture } from './operations/inspection-keep-picture.ts';
import { inspectionList } from './operations/inspection-list.ts';
import { inspectionPictures } from './operations/inspection-pictures.ts';
import { inspectionShow } from './operations/inspection-show.ts';
import { inspectionSign } from './operations/inspection-sign.ts';
import { inspectionStart } from './operations/inspection-start.ts';
import { keepingSet } from './operations/keeping-set.ts';
import { keepingShow } from './operations/keeping-show.ts';
import { kitList } from './operations/kit-list.ts';
import { kitRemove } from './operations/kit-remove.ts';
import { kitSave } from './operations/kit-save.ts';
import { ledgerCheckProof } from './operations/ledger-check-proof.ts';
import { ledgerExport } from './operations/ledger-export.ts';
import { ledgerProve } from './operations/ledger-prove.ts';
import { ledgerRebuild } from './operations/ledger-rebuild.ts';
import { ledgerVerify } from './operations/ledger-verify.ts';
import { ledgerVerifyCancel } from './operations/ledger-verify-cancel.ts';
import { ledgerVerifyStart } from './operations/ledger-verify-start.ts';
import { ledgerVerifyStatus } from './operations/ledger-verify-status.ts';
import { lifelineShow } from './operations/lifeline-show.ts';
import { markingRequestList } from './operations/marking-request-list.ts';
import { modelSheetList } from './operations/model-sheet-list.ts';
import { modelSheetRecord } from './operations/model-sheet-record.ts';
import { modelSheetSetContact } from './operations/model-sheet-set-contact.ts';
import { modelSheetSetIntervals } from './operations/model-sheet-set-intervals.ts';
import { modelSheetSetMinimumDiameter } from './operations/model-sheet-set-minimum-diameter.ts';
import { noticeList } from './operations/notice-list.ts';
import { noticePreview } from './operations/notice-preview.ts';
import { noticeRead } from './operations/notice-read.ts';
import { noticeRecord } from './operations/notice-record.ts';
import { noticeRecordCancel } from './operations/notice-record-cancel.ts';
import { noticeRecordStart } from './operations/notice-record-start.ts';
import { noticeRecordStatus } from './operations/notice-record-status.ts';
import { noticeShow } from './operations/notice-show.ts';
import { personAdd } from './operations/person-add.ts';
import { personChange } from './operations/person-change.ts';
import { personChangeOwnPin } from './operations/person-change-own-pin.ts';
import { personCompetence } from './operations/person-competence.ts';
import { personDesignate } from './operations/person-designate.ts';
import { personEndDesignation } from './operations/person-end-designation.ts';
import { personLeave } from './operations/person-leave.ts';
import { personList } from './operations/person-list.ts';
import { personReturn } from './operations/person-return.ts';
import { personSetPin } from './operations/person-set-pin.ts';
import { personShow } from './operations/person-show.ts';
import { pictureRead } from './operations/picture-read.ts';
import { pictureShow } from './operations/picture-show.ts';
import { printCancel } from './operations/print-cancel.ts';
import { printStatus } from './operations/print-status.ts';
import { printerCalibrate } from './operations/printer-calibrate.ts';
import { printerCheck } from './operations/printer-check.ts';
import { printerList } from './operations/printer-list.ts';
import { printerRemove } from './operations/printer-remove.ts';
import { printerSave } from './operations/printer-save.ts';
import { printerTest } from './operations/printer-test.ts';
import { procedureShow } from './operations/procedure-show.ts';
import { programAdopt } from './operations/program-adopt.ts';
import { programShow } from './operations/program-show.ts';
import { programVersion } from './operations/program-version.ts';
import { recordAmend } from './operations/record-amend.ts';
import { recordAmendable } from './operations/record-amendable.ts';
import { recordExport } from './operations/record-export.ts';
import { recordSize } from './operations/record-size.ts';
import { reinspectionBegin } from './operations/reinspection-begin.ts';
import { reinspectionDraw } from './operations/reinspection-draw.ts';
import { reinspectionList } from './operations/reinspection-list.ts';
import { reinspectionSee } from './operations/reinspection-see.ts';
import { reportCancel } from './operations/report-cancel.ts';
import { reportFile } from './operations/report-file.ts';
import { reportMake } from './operations/report-make.ts';
import { reportStatus } from './operations/report-status.ts';
import { restoreCancel } from './operations/restore-cancel.ts';
import { restoreOpen } from './operations/restore-open.ts';
import { restoreRun } from './operations/restore-run.ts';
import { restoreStatus } from './operations/restore-status.ts';
import { returnPlanCancel } from './operations/return-plan-cancel.ts';
import { returnPlanStart } from './operations/return-plan-start.ts';
import { returnPlanStatus } from './operations/return-plan-status.ts';
import { ruleSourcesList } from './operations/rule-sources.ts';
import { scanInterpret } from './operations/scan-interpret.ts';
import { scannerForget } from './operations/scanner-forget.ts';
import { scannerLearn } from './operations/scanner-learn.ts';
import { scannerSymbol } from './operations/scanner-symbol.ts';
import { scheduleDevices } from './operations/schedule-devices.ts';
import { scheduleDue } from './operations/schedule-due.ts';
import { scheduleNotices } from './operations/schedule-notices.ts';
import { schedulePlan } from './operations/schedule-plan.ts';
import { schedulePlanCancel } from './operations/schedule-plan-cancel.ts';
import { schedulePlanning } from './operations/schedule-planning.ts';
import { sessionAttend } from './operations/session-attend.ts';
import { sessionSignIn } from './operations/session-sign-in.ts';
import { sessionSignOut } from './operations/session-sign-out.ts';
import { sessionUnattended } from './operations/session-unattended.ts';
import { stationLoadDemo } from './operations/station-load-demo.ts';
import { stationSetUnattended } from './operations/station-set-unattended.ts';
import { stationSetup } from './operations/station-setup.ts';
import { stationStatus } from './operations/station-status.ts';
import { tagIssue } from './operations/tag-issue.ts';
import { tagPreview } from './operations/tag-preview.ts';
import { tagPrint } from './operations/tag-print.ts';
import { tagProve } from './operations/tag-prove.ts';

const operations = [
  stationStatus,
  stationSetup,
  stationLoadDemo,
  stationSetUnattended,
  sessionSignIn,
  sessionSignOut,
  sessionAttend,
  sessionUnattended,
  scanInterpret,
  scannerSymbol,
  scannerLearn,
  scannerForget,
  personList,
  personAdd,
  personDesignate,
  personSetPin,
  personChange,
  personChangeOwnPin,
  personEndDesignation,
  personLeave,
  personReturn,
  personShow,
  personCompetence,
  modelSheetList,
  modelSheetRecord,
  modelSheetSetContact,
  modelSheetSetMinimumDiameter,
  modelSheetSetIntervals,
  deviceList,
  deviceBenchIds,
  deviceShow,
  deviceRegister,
  deviceBindCode,
  deviceRemove,
  deviceKeepPicture,
  devicePictures,
  deviceRecordFacts,
  deviceSetUse,
  deviceRecordRevalidation,
  deviceRelabel,
  markingRequestList,
  dueList,
  noticeShow,
  noticeRecord,
  noticeRecordStart,
  noticeRecordStatus,
  noticeRecordCancel,
  noticeRead,
  noticePreview,
  noticeList,
  identitySearch,
  identityOpen,
  identityShow,
  identityList,
  identityPropose,
  identityConfirm,
  identityDisagree,
  identityLeaveUnidentified,
  deskShow,
  deskUser,
  custodyCheck,
  custodyCheckOut,
  custodyCheckIn,
  custodyTransfer,
  custodyWriteOff,
  custodyList,
  custodyHistory,
  kitList,
  kitSave,
  kitRemove,
  deviceStore,
  ...heldOperations,
  countPlaces,
  countPreview,
  countFinish,
  procedureShow,
  ruleSourcesList,
  programShow,
  programVersion,
  programAdopt,
  inspectionStart,
  inspectionShow,
  inspectionAnswer,
  inspectionKeepPicture,
  inspectionPictures,
  lifelineShow,
  inspectionSign,
  inspectionBreakOff,
  inspectionList,
  reinspectionList,
  reinspectionDraw,
  reinspectionBegin,
  reinspectionSee,
  insightShow,
  insightAgreement,
  tagPreview,
  tagIssue,
  tagPrint,
  tagProve,
  printStatus,
  printCancel,
  printerList,
  printerSave,
  printerRemove,
  printerCheck,
  printerTest,
  printerCalibrate,
  commandSheet,
  benchCardShow,
  binLabel,
  benchCapacityOperation,
  benchSetCapacity,
  scheduleDue,
  schedulePlan,
  schedulePlanCancel,
  schedulePlanning,
  scheduleDevices,
  scheduleNotices,
  benchIdNew,
  benchIdCheck,
  pictureRead,
  pictureShow,
  evidenceSummary,
  evidenceList,
  importPreviewOperation,
  importRun,
  importStatus,
  importCancel,
  recordSize,
  recordAmend,
  recordAmendable,
  recordExport,
  reportCancel,
  reportMake,
  reportFile,
  reportStatus,
  exportStatus,
  exportCancel,
  returnPlanCancel,
  returnPlanStart,
  returnPlanStatus,
  healthStart,
  healthStatus,
  healthCancel,
  keepingShow,
  keepingSet,
  backupMake,
  backupStatus,
  backupCancel,
  restoreOpen,
  restoreStatus,
  restoreCancel,
  restoreRun,
  ledgerVerify,
  ledgerVerifyStart,
  ledgerVerifyStatus,
  ledgerVerifyCancel,
  ledgerProve,
  ledgerCheckProof,
  checkpointList,
  checkpointExport,
  ledgerRebuild,
  ledgerExport,
] as const;

type Operations = (typeof operations)[number];
export type OperationName = Operations['name'];
export type Contract = { readonly [Each in Operations as Each['name']]: Each };

/** What a caller gives to an operation. */
export type InputOf<Name extends OperationName> = z.input<Contract[Name]['input']>;
/** What an operation gives back. */
export type OutputOf<Name extends OperationName> = z.output<Contract[Name]['output']>;

export const contract: ReadonlyMap<string, Operations> = new Map(
  operations.map((operation) => [operation.name, operation]),
);

/** An error as a carrier hands it on: a stable code, a sentence for the person, and the field at fault. */
export interface CallError {
  readonly code: string;
  readonly sentence: string;
  readonly field?: string;
}

export type CallResult<Output = unknown> =
  | { readonly ok: true; readonly output: Output }
  | { readonly ok: false; readonly error: CallError };

/** How every carrier is called: the same shape over IPC, HTTP and in the same process. */
export type Call = <Name extends OperationName>(
  name: Name,
  input: InputOf<Name>,
) => Promise<CallResult<OutputOf<Name>>>;
