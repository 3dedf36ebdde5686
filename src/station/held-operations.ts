/** The part of the contract that is about held devices: evidence, release, scrap, fall cases, returns to the manufacturer. */
import { deviceQuoteRecord } from './operations/device-quote-record.ts';
import { deviceScrap } from './operations/device-scrap.ts';
import { fallCaseClose } from './operations/fall-case-close.ts';
import { fallCaseList } from './operations/fall-case-list.ts';
import { fallCaseNote } from './operations/fall-case-note.ts';
import { fallCaseOpen } from './operations/fall-case-open.ts';
import { fallCaseShow } from './operations/fall-case-show.ts';
import { heldConfirmEvidence } from './operations/held-confirm-evidence.ts';
import { heldDocument } from './operations/held-document.ts';
import { heldList } from './operations/held-list.ts';
import { heldRecordEvidence } from './operations/held-record-evidence.ts';
import { heldShow } from './operations/held-show.ts';
import { heldWithdrawEvidence } from './operations/held-withdraw-evidence.ts';
import { releaseTake } from './operations/release-take.ts';
import { repairTermsList } from './operations/repair-terms-list.ts';
import { repairTermsRecord } from './operations/repair-terms-record.ts';
import { returnBatchAdd } from './operations/return-batch-add.ts';
import { returnBatchFollowUp } from './operations/return-batch-follow-up.ts';
import { returnBatchList } from './operations/return-batch-list.ts';
import { returnBatchReceive } from './operations/return-batch-receive.ts';
import { returnBatchShip } from './operations/return-batch-ship.ts';
import { returnBatchShow } from './operations/return-batch-show.ts';
import { returnBatchTakeOut } from './operations/return-batch-take-out.ts';
import { returnsBasisRecord } from './operations/returns-basis-record.ts';
import { returnsBasisShow } from './operations/returns-basis-show.ts';

export const heldOperations = [
  heldList,
  heldShow,
  heldDocument,
  heldRecordEvidence,
  heldConfirmEvidence,
  heldWithdrawEvidence,
  releaseTake,
  deviceScrap,
  fallCaseOpen,
  fallCaseNote,
  fallCaseClose,
  fallCaseList,
  fallCaseShow,
  repairTermsList,
  repairTermsRecord,
  deviceQuoteRecord,
  returnBatchAdd,
  returnBatchTakeOut,
  returnBatchShip,
  returnBatchFollowUp,
  returnBatchReceive,
  returnBatchList,
  returnBatchShow,
  returnsBasisShow,
  returnsBasisRecord,
] as const;
