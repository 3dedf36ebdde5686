/** What a page of ours may do, told to the browser with every answer: nothing but its own files and its own station. */
import { randomBytes } from 'node:crypto';

/** A number used once, for the one style sheet that a library of the page writes at run time. */
export const newNonce = (): string => randomBytes(16).toString('base64');

/** Who a policy is for: the page, or a worker that the page starts, which has the policy of its own script. */
export type PolicyFor = 'page' | 'worker';

/**
 * Content Security Policy Level 3 (W3C). `blob:` frames and pictures show a tag that the station just rendered. Only a
 * worker may compile WebAssembly: the decoders of pictures.
 */
export const contentSecurityPolicy = (nonce: string, policyFor: PolicyFor = 'page'): string =>
  [
    "default-src 'none'",
    policyFor === 'worker' ? "script-src 'self' 'wasm-unsafe-eval'" : "script-src 'self'",
    "worker-src 'self'",
    `style-src 'self' 'nonce-${nonce}'`,
    "img-src 'self' data: blob:",
    "font-src 'self'",
    "connect-src 'self'",
    'frame-src blob:',
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
  ].join('; ');

/** Of everything that a page may ask a PC for, the camera alone. Names from the W3C Permissions Policy registry (from memory). */
const permissionsPolicy = [
  'camera=(self)',
  ...[
    'accelerometer',
    'bluetooth',
    'display-capture',
    'geolocation',
    'gyroscope',
    'hid',
    'magnetometer',
    'microphone',
    'midi',
    'payment',
    'publickey-credentials-get',
    'serial',
    'usb',
    'xr-spatial-tracking',
  ].map((name) => `${name}=()`),
].join(', ');

/** The list of the OWASP Secure Headers Project (from memory), but for what an address without TLS or a foreign origin would need. */
export const securityHeaders = (
  nonce: string,
  policyFor: PolicyFor = 'page',
): Readonly<Record<string, string>> => ({
  'content-security-policy': contentSecurityPolicy(nonce, policyFor),
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': permissionsPolicy,
  'referrer-policy': 'no-referrer',
  'x-content-type-options': 'nosniff',
  'x-frame-options': 'DENY',
  'x-permitted-cross-domain-policies': 'none',
  'cache-control': 'no-store',
});

/**
 * The same without the policy that parts a page from those which opened it. A browser meets it with one more process, for which
 * the first page waits a tenth of a second; where there is no other page, there is nothing to be parted from. Where there is one
 * after all, a page that it leads to comes without the cookie, which is `SameSite=Strict`, and is shown nothing.
 */
export const headersOfOnlyPage = (
  headers: Readonly<Record<string, string>>,
): Readonly<Record<string, string>> => {
  const { 'cross-origin-opener-policy': _left, ...others } = headers;
  return others;
};
