/** The rules of printed tags: what may be given out, a reprint explained, and a printed tag proved by a scan. */
import type { Device } from '../device.ts';
import { refusal } from '../refusal.ts';
import type { QuarantineTag, ReprintReason, StatusTag } from '../tag-content.ts';
import type { Decision } from './decision.ts';

export interface GivenOut {
  readonly tag: StatusTag | QuarantineTag;
  readonly pdfSha256: string;
  readonly printerId?: string | undefined;
  readonly reprintBecause?: ReprintReason | undefined;
}

/** Only the tag that belongs on the device now; once more only with the reason. */
export const decideIssueTag = (
  device: Device,
  { tag, pdfSha256, printerId, reprintBecause }: GivenOut,
): Decision => {
  const { benchId, tagNumber, kind } = tag;
  if (device.currentTag?.tagNumber !== tagNumber) {
    return refusal('tag-kind-refused', { benchId, standing: device.standing, kind }, 'kind');
  }
  if (device.currentTag.printed > 0 && reprintBecause === undefined) {
    return refusal('reprint-needs-reason', { tagNumber, count: device.currentTag.printed }, 'reprintBecause');
  }
  return [
    {
      type: 'tag.issued',
      benchId,
      tagNumber,
      kind,
      pdfSha256,
      ...(tag.kind === 'status' && device.taggedDue !== undefined && tag.dueOn < device.taggedDue.on
        ? { dueOn: tag.dueOn }
        : {}),
      ...(printerId === undefined ? {} : { printerId }),
      ...(device.currentTag.printed === 0 || reprintBecause === undefined ? {} : { reprintBecause }),
    },
  ];
};

/** A tag is proved once, by the scan of what was printed. */
export const decideProveTag = (device: Device, tagNumber: number): Decision =>
  device.currentTag?.tagNumber !== tagNumber || device.currentTag.provedOn !== undefined
    ? []
    : [{ type: 'tag.proved', benchId: device.benchId, tagNumber }];
