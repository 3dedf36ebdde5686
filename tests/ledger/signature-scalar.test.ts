import { createPrivateKey, generateKeyPairSync, type KeyObject, sign } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { SignatureScalar } from '../../src/ledger/signature-scalar.ts';

/** Of 32 bytes in hex. */
const keyFrom = (secret: string): KeyObject =>
  createPrivateKey({
    // PKCS #8 of an Ed25519 key: RFC 8410 section 7.
    key: Buffer.from(`302e020100300506032b657004220420${secret}`, 'hex'),
    format: 'der',
    type: 'pkcs8',
  });

/** RFC 8032 section 7.1: secret key, message, signature. */
const vectors = [
  [
    '9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60',
    '',
    'e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b',
  ],
  [
    '4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb',
    '72',
    '92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00',
  ],
  [
    'c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7',
    'af82',
    '6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac18ff9b538d16f290ae67f760984dc6594a7c15e9716ed28dc027beceea1ec40a',
  ],
] as const;

describe('the second half of a signature', () => {
  it.each(vectors)('is that of the published vector of the key %s', (secret, message, signature) => {
    const scalar = new SignatureScalar(keyFrom(secret));
    expect(scalar.agrees(Buffer.from(message, 'hex'), Buffer.from(signature, 'hex'))).toBe(true);
  });

  it('is that of OpenSSL for other keys and texts', () => {
    for (let length = 0; length < 300; length += 1) {
      const { privateKey } = generateKeyPairSync('ed25519');
      const text = Buffer.alloc(length, length % 251);
      expect(new SignatureScalar(privateKey).agrees(text, sign(null, text, privateKey))).toBe(true);
    }
  });

  it('is another one as soon as one bit of the signature or of the text is, and with another key', () => {
    const [secret, message, hex] = vectors[2];
    const scalar = new SignatureScalar(keyFrom(secret));
    const text = Buffer.from(message, 'hex');
    const signature = Buffer.from(hex, 'hex');
    for (const changed of [text, signature]) {
      for (let bit = 0; bit < changed.length * 8; bit += 1) {
        changed[bit >> 3]! ^= 1 << (bit & 7);
        expect(scalar.agrees(text, signature), `bit ${bit} of ${changed.length * 8}`).toBe(false);
        changed[bit >> 3]! ^= 1 << (bit & 7);
      }
    }
    expect(scalar.agrees(text, signature)).toBe(true);
    expect(new SignatureScalar(keyFrom(vectors[1][0])).agrees(text, signature)).toBe(false);
    expect(scalar.agrees(text, signature.subarray(0, 63))).toBe(false);
  });

  it('is refused where the key is no private key of Ed25519', () => {
    expect(() => new SignatureScalar(generateKeyPairSync('x25519').privateKey)).toThrow(TypeError);
    expect(() => new SignatureScalar(generateKeyPairSync('ed25519').publicKey)).toThrow(TypeError);
  });
});
