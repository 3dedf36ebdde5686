/** `ledger.verify`: recomputes every hash and every projection of the record, reads every kept picture, and names whatever differs. */
import { defineOperation } from '../operation.ts';
import { verificationSchema, verifyInput, verifyRecord } from '../verify-record.ts';

export const ledgerVerify = defineOperation({
  name: 'ledger.verify',
  summary:
    'Proves the record: every hash, every checkpoint, every projection against it, and every kept picture.',
  kind: 'query',
  access: 'anyone',
  input: verifyInput,
  output: verificationSchema,
  run: (context, input) => verifyRecord(context, input),
});
