import { expect, test } from 'vitest';
import { Keyring } from '../../src/host/keyring.ts';

test('a key opens once, and the session that it gives is known from then on', () => {
  const keyring = new Keyring();
  const key = keyring.cutKey();
  const session = keyring.exchange(key);
  expect(keyring.sessionOf(session)).toBe('window-1');
  expect(keyring.exchange(key)).toBeUndefined();
  expect(keyring.sessionOf(session)).toBe('window-1');
});

test('keys and sessions are 256 random bits each, and none fits in the place of another', () => {
  const keyring = new Keyring();
  const keys = Array.from({ length: 50 }, () => keyring.cutKey());
  const sessions = keys.map((key) => keyring.exchange(key) ?? '');
  const secrets = [...keys, ...sessions];
  expect(new Set(secrets).size).toBe(100);
  expect(secrets.every((secret) => Buffer.from(secret, 'base64url').length === 32)).toBe(true);
  expect(new Set(sessions.map((secret) => keyring.sessionOf(secret))).size).toBe(50);
  expect(keys.map((key) => keyring.sessionOf(key))).toEqual(keys.map(() => undefined));
  expect(keyring.sessionOf(undefined)).toBeUndefined();
  expect(keyring.sessionOf('')).toBeUndefined();
});
