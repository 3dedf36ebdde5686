/** The rules of bringing a held device back to the bench: every piece of evidence is there, and its tag came back. */
import type { Device } from '../../device.ts';
import { type MissingEvidence, missingEvidence, type ReleaseTerms } from '../../held/missing-evidence.ts';
import { type Refusal, refusal } from '../../refusal.ts';
import type { Reason } from '../../verdict.ts';
import type { Decision } from '../decision.ts';
import { heldFault, notHere } from './evidence.ts';

/** `tagNumber` was read on the quarantine tag that is destroyed now: it must be the one that belongs on the device. */
export const decideRelease = (device: Device, tagNumber: number, terms: ReleaseTerms): Decision => {
  const refused = releaseFault(device, terms);
  if (refused !== undefined) return refused;
  const { benchId, currentTag } = device;
  if (currentTag?.tagNumber !== tagNumber)
    return refusal('release-other-tag', { benchId, tagNumber, current: currentTag?.tagNumber ?? '—' }, 'tag');
  const { key, version } = terms.rules;
  return [{ type: 'device.released', benchId, tagNumber, rules: { key, version } }];
};

/** Why a device may not go back to the bench yet, the tag aside: the first thing that is missing. */
export const releaseFault = (device: Device, terms: ReleaseTerms): Refusal | undefined => {
  const notHeld = heldFault(device);
  if (notHeld !== undefined) return notHeld;
  const { benchId, release, fallCases = [] } = device;
  if (release !== undefined) return refusal('release-already', { benchId, on: release.on });
  const refused = notHere(device) ?? evidenceFault(device, terms);
  if (refused !== undefined) return refused;
  const open = fallCases.find(({ closedOn }) => closedOn === undefined);
  return open === undefined
    ? undefined
    : refusal('release-fall-case-open', { benchId, fallCase: open.fallCase });
};

/** The refusal that names the first piece of evidence that is missing, or `undefined` where all of it is there. */
export const evidenceFault = (device: Device, terms: ReleaseTerms): Refusal | undefined => {
  const missing = missingEvidence(device, terms);
  const [first] = missing;
  return first === undefined ? undefined : missingRefusal(device, first, missing.length);
};

const missingRefusal = (
  { benchId, reasons }: Device,
  { reason, kinds, unconfirmed, stillToAgree = 1 }: MissingEvidence,
  count: number,
): Refusal => {
  const sentence = reasons[reason - 1]?.sentence ?? '';
  if (unconfirmed !== undefined)
    return refusal('release-evidence-unconfirmed', {
      benchId,
      reason: sentence,
      evidence: unconfirmed,
      persons: stillToAgree,
    });
  const missing = {
    en: kinds.map((kind) => kind.missing.en).join(' Or: '),
    es: kinds.map((kind) => kind.missing.es).join(' O bien: '),
  };
  return refusal('release-evidence-missing', { benchId, reason: sentence, missing, count });
};

/** Back in quarantine although nothing was found: an inspection for its return was begun and not finished. */
export const brokenOffReturn: Reason = {
  key: 'release.inspection-broken-off',
  zone: 'history',
  effect: 'remove',
  sentence: {
    en: 'Its inspection for return was broken off.',
    es: 'Su inspección para el retorno se interrumpió.',
  },
};
