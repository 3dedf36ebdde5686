/** Records that a tag was given out, whichever way it went. */
import { createHash } from 'node:crypto';
import { decideIssueTag, type GivenOut } from '../domain/decide/tag.ts';
import { isRefusal, type Refusal } from '../domain/refusal.ts';
import type { TagContent } from '../domain/tag-content.ts';
import { deviceIn } from './lookup.ts';
import type { OperationContext } from './operation.ts';
import { record } from './record.ts';

type How = Pick<GivenOut, 'printerId' | 'reprintBecause'>;

/** Why the tag may not be given out, or `undefined` where it may. Asked before anything is printed. */
export const refusedIssue = async (
  { ledger }: OperationContext,
  content: TagContent,
  how: How,
): Promise<Refusal | undefined> => {
  if (content.kind === 'id') return undefined;
  const row = await ledger.read((reader) => deviceIn(reader, content.benchId));
  if (isRefusal(row)) return row;
  const decision = decideIssueTag(row.device, { tag: content, pdfSha256: '', ...how });
  return isRefusal(decision) ? decision : undefined;
};

/** An ID label says nothing of the device's standing, and is not recorded. */
export const recordIssue = async (
  context: OperationContext,
  content: TagContent,
  pdf: Uint8Array,
  how: How,
): Promise<Refusal | undefined> => {
  if (content.kind === 'id') return undefined;
  const pdfSha256 = createHash('sha256').update(pdf).digest('hex');
  const result = await record(context, async (reader) => {
    const row = await deviceIn(reader, content.benchId);
    return isRefusal(row) ? row : decideIssueTag(row.device, { tag: content, pdfSha256, ...how });
  });
  return isRefusal(result) ? result : undefined;
};
