import { createPrivateKey } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { checkpointText, originOf, readCheckpoint } from '../../src/ledger/checkpoint.ts';
import { proofText, readProof } from '../../src/ledger/inclusion-proof.ts';
import {
  judgeNote,
  keyIdOf,
  noteKeyText,
  readNote,
  readNoteKey,
  signNote,
} from '../../src/ledger/signed-note.ts';

/** Keys, text and note of the reference implementation: golang.org/x/mod, sumdb/note/note_test.go. */
const verifierKey = 'PeterNeumann+c74f20a3+ARpc2QcUPDhMQegwxbzhKqiBfsVkmqq/LDE4izWy10TW';
const otherVerifierKey = 'EnochRoot+af0cfe78+ATtqJ7zOtqQtYqOo0CpvDXNlMhV3HeJDpjrASKGLWdop';
const seed = Buffer.from('AYEKFALVFGyNhPJEMzD1QIDr+Y7hfZx09iUvxdXHKDFz', 'base64').subarray(1);
const text =
  "If you think cryptography is the answer to your problem,\nthen you don't know what your problem is.\n";
const signature =
  '— PeterNeumann x08go/ZJkuBS9UG/SffcvIAQxVBtiFupLLr8pAcElZInNIuGUgYN1FFYC2pZSNXgKvqfqdngotpRZb6KE6RyyBwJnAM=\n';
const otherSignature =
  '— EnochRoot rwz+eBzmZa0SO3NbfRGzPCpDckykFXSdeX+MNtCOXm2/5n2tiOHp+vAF1aGrQ5ovTG01oOTGwnWLox33WWd1RvMc+QQ=\n';
const note = `${text}\n${signature}`;
const key = readNoteKey(verifierKey)!;
const otherKey = readNoteKey(otherVerifierKey)!;
/** RFC 8410 section 7: a PKCS #8 Ed25519 key is these bytes and the seed. */
const privateKey = createPrivateKey({
  key: Buffer.concat([Buffer.from('302e020100300506032b657004220420', 'hex'), seed]),
  format: 'der',
  type: 'pkcs8',
});

describe('a signed note', () => {
  it('has the published key ID and key text', () => {
    expect(keyIdOf(key).toString('hex')).toBe('c74f20a3');
    expect(noteKeyText(key)).toBe(verifierKey);
    expect(noteKeyText(otherKey)).toBe(otherVerifierKey);
  });

  it('is, signed with the published key, the published note', () => {
    expect(signNote(text, key, privateKey)).toBe(note);
  });

  it('of the reference implementation is found good, by the key that signed it and by no other', () => {
    const both = readNote(`${note}${otherSignature}`)!;
    expect(both.text).toBe(text);
    expect(judgeNote(both, key)).toBe('good');
    expect(judgeNote(both, otherKey)).toBe('good');
    expect(judgeNote(readNote(note)!, otherKey)).toBe('absent');
  });

  it('is found bad once its text or its signature is changed', () => {
    const damaged = [note.replace('think', 'thank'), note.replace('ZJku', 'ZJkv')];
    expect(damaged.map((each) => judgeNote(readNote(each)!, key))).toEqual(['bad', 'bad']);
  });

  // The malformed messages of the same test file, and one with more signatures than are read.
  it.each([
    ['no signature', text],
    ['an empty place for signatures', `${text}\n`],
    ['no line feed at its end', note.slice(0, -1)],
    ['a control character', `\u0001${note}`],
    ['a name with a space', `${text}\n${signature.replace('PeterNeumann', 'Bad Name')}`],
    ['a line that is no signature', `${note}Unexpected line.\n`],
    ['101 signatures', `${text}\n${signature.repeat(101)}`],
  ])('with %s is none', (_what, given) => {
    expect(readNote(given)).toBeUndefined();
  });

  it('takes no key text that was cut or changed', () => {
    for (let from = 0; from < verifierKey.length; from += 1) {
      for (let to = from + 1; to <= verifierKey.length; to += 1) {
        if (from > 0 || to < verifierKey.length)
          expect(readNoteKey(verifierKey.slice(from, to))).toBeUndefined();
      }
      const changed = String.fromCharCode(verifierKey.charCodeAt(from) + 1);
      expect(readNoteKey(verifierKey.slice(0, from) + changed + verifierKey.slice(from + 1))).toBeUndefined();
    }
  });
});

describe('a checkpoint', () => {
  /** The example of c2sp.org/tlog-checkpoint. */
  const example =
    'example.com/behind-the-sofa\n20852163\nCsUYapGGPo4dkMgIAUqom/Xajj7h2fB2MPA3j2jxq2I=\n\n— example.com/behind-the-sofa Az3grlgtzPICa5OS8npVmf1Myq/5IZniMp+ZJurmRDeOoRDe4URYN7u5/Zhcyv2q1gGzGku9nTo+zyWE+xeMcTOAYQ8=\n';

  it('is read as its specification writes it, and written the same', () => {
    const checkpoint = readCheckpoint(example)!;
    expect(checkpoint).toMatchObject({ origin: 'example.com/behind-the-sofa', size: 20852163 });
    expect(checkpointText(checkpoint)).toBe(example.slice(0, example.indexOf('\n\n') + 1));
  });

  it.each([
    ['a size with a leading zero', example.replace('20852163', '020852163')],
    ['no size', example.replace('20852163\n', '')],
    ['a root that is too short', example.replace('CsUYapGG', '')],
    ['a root that is not base64', example.replace('CsUYapGG', 'CsUYap*G')],
    ['no origin', example.replace('example.com/behind-the-sofa\n', '\n')],
    ['nothing but a text', 'a shopping list'],
  ])('with %s is none', (_what, given) => {
    expect(readCheckpoint(given)).toBeUndefined();
  });

  it('names a station without what a name must not hold', () => {
    expect(originOf('c4b1')).toBe('srl-bench/c4b1');
    expect(originOf('Cold Ridge + annexe')).toBe('srl-bench/Cold%20Ridge%20%2B%20annexe');
  });

  const hash = (base64: string) => Buffer.from(base64, 'base64');
  /** The example of c2sp.org/tlog-proof, with the checkpoint above, whose signature it shortens. */
  const proof = `c2sp.org/tlog-proof@v1\nindex 73894\ngSKyXoYZUgZ6jduWYrkDOARinOMGJveXjgMkBTcdPlQ=\nB95lDa8R83lS8n0eG+o0buTxRKQTYFi//1U8anccXmA=\n\n${example}`;

  it('stands in a proof as its specification writes it', () => {
    const path = [
      hash('gSKyXoYZUgZ6jduWYrkDOARinOMGJveXjgMkBTcdPlQ='),
      hash('B95lDa8R83lS8n0eG+o0buTxRKQTYFi//1U8anccXmA='),
    ];
    expect(proofText({ index: 73894, path, checkpoint: example })).toBe(proof);
    expect(readProof(proof)).toMatchObject({ index: 73894, path, checkpoint: { size: 20852163 } });
    const withExtra = proof.replace('\nindex', '\nextra YWdlLXYxLjIuMS1kYXJ3aW4tYXJt\nindex');
    expect(readProof(withExtra)).toEqual(readProof(proof));
  });

  it.each([
    ['another format', proof.replace('@v1', '@v2')],
    ['no index', proof.replace('index 73894\n', '')],
    ['an index with a leading zero', proof.replace('73894', '073894')],
    ['half a hash', proof.replace('gSKyXoYZ', '')],
    ['no checkpoint', proof.slice(0, proof.indexOf('\n\n') + 2)],
    ['nothing', ''],
  ])('stands in no proof with %s', (_what, given) => {
    expect(readProof(given)).toBeUndefined();
  });
});
